import { change, type Group, parts, px } from '../svg.ts'

/** A rectangle in words of a path, from its middle at the top. */
export const rectangle = (x: number, y: number, { wide, tall }: Size): string =>
  `M${px(x - wide / 2)},${px(y)}h${wide}v${tall}h${-wide}Z`

/** The size of a butt, in pixels. */
export interface Size {
  readonly wide: number
  readonly tall: number
}

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
