/** A point or a direction in mm: to the right along the bed, to the back, and up. */
export type Vector = readonly [right: number, back: number, up: number]

/** The scalar product of two vectors. */
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** From `b` to `a`. */
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

/** The point a share, 0 to 1, of the way from `a` to `b`. */
export const between = (a: Vector, b: Vector, share: number): Vector => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
]

/** The vector product of two vectors. */
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

/** A vector's direction, of length 1; the vector itself where it has no length. */
export const unit = (a: Vector): Vector => {
  const length = Math.hypot(...a)
  return length < 1e-12 ? a : [a[0] / length, a[1] / length, a[2] / length]
}
