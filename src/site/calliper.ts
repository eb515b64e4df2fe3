import { px } from '../drawings/shared/paths.ts'

/** How long a calliper's jaw is drawn on either side of the points it touches, and the head of an arrow, in pixels. */
const [jaw, head] = [26, 7]

/** A calliper's two jaws across the line between two points of the picture, and the arrow between them. */
export const calliper = (
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
): { jaws: string; arrow: string } => {
  const long = Math.hypot(x1 - x0, y1 - y0)
  const [ux, uy] = [(x1 - x0) / long, (y1 - y0) / long]
  const [nx, ny] = [-uy, ux]
  const cross = (px0: number, py0: number): string =>
    `M${px(px0 - nx * 4)},${px(py0 - ny * 4)}L${px(px0 + nx * jaw)},${px(py0 + ny * jaw)}`
  // The arrow is beside the points, between the jaws where there is room, else from outside.
  const inside = long > 3 * head
  const at = (along: number, aside: number): string =>
    `${px(x0 + ux * along + nx * aside)},${px(y0 + uy * along + ny * aside)}`
  const tip = (along: number, way: 1 | -1): string =>
    `M${at(along - way * head, jaw - 8 - 3)}L${at(along, jaw - 8)}L${at(along - way * head, jaw - 8 + 3)}`
  const line = inside
    ? `M${at(0, jaw - 8)}L${at(long, jaw - 8)}${tip(0, -1)}${tip(long, 1)}`
    : `M${at(-3 * head, jaw - 8)}L${at(0, jaw - 8)}M${at(long, jaw - 8)}L${at(long + 3 * head, jaw - 8)}${tip(0, 1)}${tip(long, -1)}`
  return { jaws: cross(x0, y0) + cross(x1, y1), arrow: line }
}
