import { drawShapes, type Group } from './svg.ts'

/** A path for each look, empty to begin with, to which the pieces of things with that look are added. */
export const emptyPaths = <Look extends string>(looks: readonly Look[]): Record<Look, string> =>
  Object.fromEntries(looks.map((look) => [look, ''])) as Record<Look, string>

/**
 * Draws many things of the same kind as one path for each look that they can have, which the styles read from an
 * attribute: an element for each thing would cost every picture several times as much.
 */
export const drawByLook = <Look extends string>(
  group: Group,
  className: string,
  attribute: 'data-look' | 'data-mark' | 'data-kind' | 'data-hole' | 'data-verdict',
  looks: readonly Look[],
  paths: Readonly<Record<Look, string>>,
): void => {
  drawShapes(group, 'path', className, looks, (look) => ({ [attribute]: look, d: paths[look] }))
}
