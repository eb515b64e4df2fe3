import { type FaceDraft, type Hull, hullOf, type Mark, type Shape, type Wire, wire } from './piece.ts'
import { extentOf } from './extent.ts'
import { between, type Vector } from './vector.ts'

/** A plane across one of the machine's axes. */
export interface Plane {
  readonly axis: 0 | 1 | 2
  readonly at: number
}

/** A plane where the machine is cut open, and on which side of it what is left is shown. */
export interface Section extends Plane {
  readonly shows: 'before' | 'beyond'
}

/** Adds a corner to a loop, where it is not there already as the one before or the first one. */
const add = (loop: number[], corner: number): void => {
  if (loop.at(-1) !== corner && loop[0] !== corner) loop.push(corner)
}

/** The part of a mark on the side of a plane on which `side` times the coordinate is less; null where nothing of it is there. */
export const halfOfMark = (mark: Mark, { axis, at }: Plane, side: 1 | -1): Mark | null => {
  const beyond = mark.points.map((point) => side * (point[axis] - at))
  if (beyond.every((distance) => distance <= 0)) return mark
  const points: Vector[] = []
  const open: number[] = []
  for (const [n, here] of beyond.entries()) {
    const next = (n + 1) % beyond.length
    const there = beyond[next]!
    const [from, to] = [mark.points[n]!, mark.points[next]!]
    if (here <= 0) {
      if (mark.open?.includes(n)) open.push(points.length)
      points.push(from)
    }
    if (here <= 0 === there <= 0) continue
    if (here <= 0) open.push(points.length)
    points.push(between(from, to, here / (here - there)))
  }
  return points.length < 2 ? null : { look: mark.look, points, open }
}

/** The part of a hull on the side of a plane on which `side` times the coordinate is less; where it is cut it has such a face. */
const halfOf = (hull: Hull, { axis, at }: Plane, side: 1 | -1, kind: 'joint' | 'cut'): Hull => {
  const points: Vector[] = []
  const kept = new Map<string, number>()
  const keep = (key: string, point: Vector): number => {
    const known = kept.get(key)
    if (known !== undefined) return known
    points.push(point)
    kept.set(key, points.length - 1)
    return points.length - 1
  }
  const beyond = (n: number): number => side * (hull.points[n]![axis] - at)
  const faces: FaceDraft[] = []
  /** Where the plane cuts the hull: from corner to corner of the joint, the other way round than the faces. */
  const joint = new Map<number, number>()
  for (const { corners, kind: faceKind, marks } of hull.faces) {
    const ownMarks = marks.flatMap((mark) => halfOfMark(mark, { axis, at }, side) ?? [])
    const loop: number[] = []
    let [leaves, enters] = [-1, -1]
    for (const [k, from] of corners.entries()) {
      const to = corners[(k + 1) % corners.length]!
      const [here, there] = [beyond(from), beyond(to)]
      if (here <= 0) add(loop, keep(`${from}`, hull.points[from]!))
      if (here <= 0 === there <= 0) continue
      const share = here / (here - there)
      const key =
        share < 1e-6 ? `${from}` : share > 1 - 1e-6 ? `${to}` : `${Math.min(from, to)}-${Math.max(from, to)}`
      const crossing = keep(key, between(hull.points[from]!, hull.points[to]!, share))
      add(loop, crossing)
      if (here <= 0) leaves = crossing
      else enters = crossing
    }
    if (leaves >= 0 && enters >= 0) joint.set(enters, leaves)
    if (loop.length >= 3) faces.push({ corners: loop, kind: faceKind, marks: ownMarks })
  }
  const [start] = joint.keys()
  if (start !== undefined) {
    const loop = [start]
    for (let next = joint.get(start); next !== undefined && next !== start; next = joint.get(next))
      loop.push(next)
    if (loop.length >= 3) faces.push({ corners: loop, kind })
  }
  return hullOf(points, faces)
}

const wireHalf = ({ ends, radius, joined }: Wire, { axis, at }: Plane, side: 1 | -1): Wire => {
  const [from, to] = ends
  const middle = between(from, to, (at - from[axis]) / (to[axis] - from[axis]))
  return side * (from[axis] - at) <= 0
    ? wire(from, middle, radius, [joined[0], true])
    : wire(middle, to, radius, [true, joined[1]])
}

/** Whether a plane across an axis can cut a shape: coils never, and wires only straight across. */
export const canBeCut = (shape: Shape, axis: 0 | 1 | 2): boolean => {
  if (shape.kind !== 'wire') return shape.kind === 'hull'
  const [from, to] = shape.ends
  return [0, 1, 2].every((other) => (from[other] === to[other]) === (other !== axis))
}

/** The two parts of a shape that a plane cuts: before it and beyond it. A coil can't be cut; it throws a RangeError. */
export const cut = (shape: Shape, plane: Plane): readonly [Shape, Shape] => {
  switch (shape.kind) {
    case 'hull':
      return [halfOf(shape, plane, 1, 'joint'), halfOf(shape, plane, -1, 'joint')]
    case 'wire':
      return [wireHalf(shape, plane, 1), wireHalf(shape, plane, -1)]
    case 'coil':
      throw new RangeError('a coil spring can’t be cut')
  }
}

/** How near to a plane a face is that lies in it, in mm. */
const inPlane = 1e-6

/** A hull whose neighbour a section takes away: where the two were joined it is cut. */
const laidOpen = (hull: Hull, { axis, at }: Plane): Hull => {
  const isOpen = (corners: readonly number[]): boolean =>
    corners.every((corner) => Math.abs(hull.points[corner]![axis] - at) < inPlane)
  return hull.faces.some(({ corners, kind }) => kind === 'joint' && isOpen(corners))
    ? hullOf(
        hull.points,
        hull.faces.map(({ corners, kind, marks }) => ({
          corners,
          kind: kind === 'joint' && isOpen(corners) ? 'cut' : kind,
          marks,
        })),
      )
    : hull
}

/** What a section leaves of a shape: what is on the side that it shows, hatched where it is cut; null where nothing is. */
export const sectionOf = (shape: Shape, section: Section): Shape | null => {
  const { axis, at } = section
  const { least, most } = extentOf(shape)
  const side = section.shows === 'before' ? 1 : -1
  const [inner, outer] = side === 1 ? [least[axis], most[axis]] : [-most[axis], -least[axis]]
  if (outer <= side * at) return shape.kind === 'hull' ? laidOpen(shape, section) : shape
  if (inner >= side * at - 0.02) return null
  if (shape.kind === 'hull') return halfOf(shape, section, side, 'cut')
  return shape.kind === 'wire' && shape.ends[0][axis] !== shape.ends[1][axis]
    ? wireHalf(shape, section, side)
    : null
}
