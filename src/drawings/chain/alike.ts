import { change, type Group, parts } from '../shared/svg.ts'

/**
 * Draws things as one path for each look that they can have: an element for each thing would cost every picture several
 * times as much. A null is none; `pathOf` gives its piece of the path.
 */
export const drawAlike = <Look extends string>(
  group: Group,
  name: string,
  looks: readonly Look[],
  indexes: readonly (number | null)[],
  lookOf: (index: number) => Look | null,
  pathOf: (index: number) => string,
): void => {
  const paths = new Map<Look, string>()
  for (const index of indexes) {
    const look = index === null ? null : lookOf(index)
    if (index !== null && look !== null) paths.set(look, (paths.get(look) ?? '') + pathOf(index))
  }
  const drawn = parts(group, 'path', name, looks)
  change(drawn, 'data-look', (look) => look)
  change(drawn, 'd', (look) => paths.get(look) ?? '')
}
