/** Pieces of paths in the picture's pixels, as the `d` of a path takes them. */

/** A point of the picture, in its own pixels. */
export type PicturePoint = readonly [x: number, y: number]

/** A coordinate or length as it is written: to a tenth of a pixel, so that pages and snapshots stay small. */
export const px = (value: number): number => Math.round(value * 10) / 10 + 0

const through = (points: readonly PicturePoint[]): string =>
  points.map(([x, y]) => `${px(x)},${px(y)}`).join('L')

/** A closed outline through these points. */
export const outline = (points: readonly PicturePoint[]): string => `M${through(points)}Z`

/** An open line through these points. */
export const polyline = (points: readonly PicturePoint[]): string =>
  points.length === 0 ? '' : `M${through(points)}`

/** A full circle. */
export const ring = (x: number, y: number, r: number): string =>
  `M${px(x - r)},${px(y)}a${r},${r} 0 1 0 ${px(2 * r)},0a${r},${r} 0 1 0 ${px(-2 * r)},0Z`

/** A rectangle from the middle of its upper side, such as a butt. */
export const rectangle = (
  x: number,
  y: number,
  { wide, tall }: { readonly wide: number; readonly tall: number },
): string => `M${px(x - wide / 2)},${px(y)}h${wide}v${tall}h${-wide}Z`

/** A rectangle between two corners. */
export const boxPath = (left: number, top: number, right: number, bottom: number): string =>
  outline([
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ])

/** The two arrow heads and the line of a dimension between two points, upright or level. */
export const dimensionLine = (x1: number, y1: number, x2: number, y2: number): string => {
  const length = Math.hypot(x2 - x1, y2 - y1)
  if (length < 0.5) return ''
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length]
  const head = (x: number, y: number, side: 1 | -1): string => {
    const [bx, by] = [x + side * ux * 6, y + side * uy * 6]
    return `M${px(bx - uy * 2.2)},${px(by + ux * 2.2)}L${px(x)},${px(y)}L${px(bx + uy * 2.2)},${px(by - ux * 2.2)}`
  }
  const line = `M${px(x1)},${px(y1)}L${px(x2)},${px(y2)}`
  // Where the arrows do not fit between the points they are outside and point inwards.
  return length >= 15
    ? `${line}${head(x1, y1, 1)}${head(x2, y2, -1)}`
    : `M${px(x1 - ux * 12)},${px(y1 - uy * 12)}L${px(x2 + ux * 12)},${px(y2 + uy * 12)}${head(x1, y1, -1)}${head(x2, y2, 1)}`
}
