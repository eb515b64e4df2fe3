import { type Extent, reachIn } from './extent.ts'
import type { Shape } from './piece.ts'
import { cross, dot, minus, unit, type Vector } from './vector.ts'

/** A direction in which one shape is wholly before another, and how far they are apart; negative where they overlap. */
export interface Separation {
  /** From the first shape to the second. */
  readonly direction: Vector
  readonly gap: number
}

const axes: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

const directionOf = (shape: Shape): Vector | null =>
  shape.kind === 'hull' ? null : unit(minus(shape.ends[1], shape.ends[0]))

/** The directions of a hull's edges, each once. */
const edgeDirections = (shape: Shape): Vector[] => {
  const along = directionOf(shape)
  if (shape.kind !== 'hull') return along ? [along] : []
  const found: Vector[] = []
  for (const { from, to } of shape.edges) {
    const direction = unit(minus(shape.points[to]!, shape.points[from]!))
    if (!found.some((known) => Math.hypot(...cross(known, direction)) < 0.01)) found.push(direction)
  }
  return found
}

/** The directions in which two convex shapes that do not touch can be apart (separating axes). */
const candidates = (one: Shape, other: Shape): Vector[] => {
  const found = [...axes]
  for (const shape of [one, other])
    if (shape.kind === 'hull') for (const { normal } of shape.faces) found.push(normal)
  const [edges, others] = [edgeDirections(one), edgeDirections(other)]
  for (const edge of edges)
    for (const against of others) {
      const direction = cross(edge, against)
      if (Math.hypot(...direction) > 0.05) found.push(unit(direction))
    }
  // Parallel wires are parted across both, from one to the other.
  const along = directionOf(one)
  if (along && one.kind !== 'hull' && other.kind !== 'hull') {
    const off = minus(other.ends[0], one.ends[0])
    const on = dot(off, along)
    const across = minus(off, [along[0] * on, along[1] * on, along[2] * on])
    if (Math.hypot(...across) > 0.01) found.push(unit(across))
  }
  return found
}

/**
 * Along which axes of the machine the room that two shapes take is apart, as a number with a digit to the base of three for
 * each axis, the first the lowest: 0 where it is not, 1 where the second is beyond the first, 2 where it is before it.
 */
export const separationByRoom = (one: Extent, other: Extent): number => {
  let found = 0
  for (const axis of [2, 1, 0] as const) {
    const isBeyond = other.least[axis] - one.most[axis] > -0.001
    const isBefore = one.least[axis] - other.most[axis] > -0.001
    found = found * 3 + (isBeyond === isBefore ? 0 : isBeyond ? 1 : 2)
  }
  return found
}

/** Along which direction two shapes are furthest apart, or overlap least. */
export const separationOf = (one: Shape, other: Shape): Separation => {
  let best: Separation = { direction: [0, 0, 1], gap: -Infinity }
  for (const direction of candidates(one, other)) {
    const [least, most] = reachIn(one, direction)
    const [otherLeast, otherMost] = reachIn(other, direction)
    const [ahead, behind] = [otherLeast - most, least - otherMost]
    if (ahead > best.gap) best = { direction, gap: ahead }
    if (behind > best.gap) best = { direction: [-direction[0], -direction[1], -direction[2]], gap: behind }
    // An axis of the machine is enough where something is clear in it.
    if (best.gap > 0.3) return best
  }
  return best
}
