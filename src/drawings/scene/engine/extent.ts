import type { Shape } from './piece.ts'
import { dot, minus, unit, type Vector } from './vector.ts'

/** The room that something takes: least and greatest of each coordinate. */
export interface Extent {
  readonly least: Vector
  readonly most: Vector
}

/**
 * How far one end of a wire reaches to either side of its middle in a direction, where the wire's slope in it is this.
 * Round ends reach as far in every direction; where a wire goes on, and at a coil's ends, they are flat.
 */
const endReach = (radius: number, slope: number, isFlat: boolean): number =>
  isFlat ? radius * Math.sqrt(Math.max(0, 1 - slope * slope)) : radius

/** How far a shape reaches in a direction of length 1: least and greatest. */
export const reachIn = (shape: Shape, direction: Vector): readonly [number, number] => {
  let [least, most] = [Infinity, -Infinity]
  if (shape.kind === 'hull') {
    for (const point of shape.points) {
      const reach = dot(point, direction)
      if (reach < least) least = reach
      if (reach > most) most = reach
    }
    return [least, most]
  }
  const { ends, radius } = shape
  const slope = dot(unit(minus(ends[1], ends[0])), direction)
  for (const n of [0, 1] as const) {
    const middle = dot(ends[n], direction)
    const aside = endReach(radius, slope, shape.kind === 'coil' || shape.joined[n])
    least = Math.min(least, middle - aside)
    most = Math.max(most, middle + aside)
  }
  return [least, most]
}

const axes: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

/** The room that a shape takes. */
export const extentOf = (shape: Shape): Extent => {
  const [x, y, z] = axes.map((axis) => reachIn(shape, axis))
  return { least: [x![0], y![0], z![0]], most: [x![1], y![1], z![1]] }
}

/** The room that all of these take together. */
export const extentOfAll = (extents: Iterable<Extent>): Extent => {
  const least: [number, number, number] = [Infinity, Infinity, Infinity]
  const most: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const each of extents)
    for (const axis of [0, 1, 2] as const) {
      least[axis] = Math.min(least[axis], each.least[axis])
      most[axis] = Math.max(most[axis], each.most[axis])
    }
  return { least, most }
}
