import type { Directions } from './camera.ts'
import { cut, type Plane, sectionOf } from './cut.ts'
import { type Extent, extentOf, reachIn } from './extent.ts'
import type { Shape } from './piece.ts'
import { separationByRoom, separationOf } from './separate.ts'
import { type Item, parted, type Tree } from './tree.ts'
import { dot, unit, type Vector } from './vector.ts'

/** What is drawn of a pose: a piece of the machine by its place in the list, and its shape or the part of it meant. */
export interface Drawn {
  readonly piece: number
  readonly shape: Shape
}

/** A tree with the pieces of one pose in it: in its leaves, for each pair, the direction from the first to the second. */
export type Posed =
  | { readonly kind: 'plane'; readonly axis: 0 | 1 | 2; readonly before: Posed; readonly beyond: Posed }
  | { readonly kind: 'leaf'; readonly drawn: readonly Drawn[]; readonly pairs: readonly Vector[] }

/** A piece on its way through the tree. */
interface Going extends Item, Drawn {
  readonly shape: Shape
}

/** What was computed of a shape: shapes never change, and most of a machine is the same from pose to pose. */
interface Known {
  extent?: Extent
  readonly halves: Map<Plane, readonly [Shape, Shape]>
  readonly sections: Map<number, Shape | null>
  readonly directions: WeakMap<Shape, Vector>
}

const known = new WeakMap<Shape, Known>()

const knownOf = (shape: Shape): Known => {
  const found = known.get(shape) ?? { halves: new Map(), sections: new Map(), directions: new WeakMap() }
  known.set(shape, found)
  return found
}

const extentNow = (shape: Shape): Extent => (knownOf(shape).extent ??= extentOf(shape))

const halvesNow = (shape: Shape, plane: Plane): readonly [Shape, Shape] => {
  const { halves } = knownOf(shape)
  const found = halves.get(plane) ?? cut(shape, plane)
  halves.set(plane, found)
  return found
}

const sectionNow = (shape: Shape, plane: Plane): Shape | null => {
  const { sections } = knownOf(shape)
  const key = plane.at * 3 + plane.axis * 1e6
  const found = sections.get(key)
  if (found !== undefined) return found
  const section = sectionOf(shape, plane)
  sections.set(key, section)
  return section
}

const directionNow = (one: Going, other: Going): Vector => {
  const { directions } = knownOf(one.shape)
  const found =
    directions.get(other.shape) ??
    (separationByRoom(one.extent, other.extent) ?? separationOf(one.shape, other.shape)).direction
  directions.set(other.shape, found)
  return found
}

const halvesOf =
  (plane: Plane) =>
  ({ piece, shape }: Going): readonly [Going, Going] => {
    const [near, far] = halvesNow(shape, plane)
    return [
      { piece, shape: near, extent: extentNow(near) },
      { piece, shape: far, extent: extentNow(far) },
    ]
  }

const leafOf = (drawn: readonly Going[]): Posed => {
  const pairs: Vector[] = []
  for (const [n, one] of drawn.entries())
    for (const other of drawn.slice(n + 1)) pairs.push(directionNow(one, other))
  return { kind: 'leaf', drawn, pairs }
}

const pose = (tree: Tree, items: readonly Going[]): Posed => {
  if (!tree || items.length < 2) return leafOf(items)
  const { plane } = tree
  const [before, beyond] = parted(items, plane, halvesOf(plane))
  if (before.length === 0) return pose(tree.beyond, beyond)
  if (beyond.length === 0) return pose(tree.before, before)
  return {
    kind: 'plane',
    axis: plane.axis,
    before: pose(tree.before, before),
    beyond: pose(tree.beyond, beyond),
  }
}

/**
 * Puts the pieces of a pose into a tree. Pieces that are not shown are null. Where there is a section, only what is before
 * it is shown.
 */
export const posedIn = (tree: Tree, shapes: readonly (Shape | null)[], section: Plane | null): Posed =>
  pose(
    tree,
    shapes.flatMap((whole, piece): Going[] => {
      const shape = whole && section ? sectionNow(whole, section) : whole
      return shape ? [{ piece, shape, extent: extentNow(shape) }] : []
    }),
  )

/** How far a piece reaches across the picture, up it, and along its two diagonals: only what overlaps has to be ordered. */
type Outline = readonly (readonly [least: number, most: number])[]

const sum = (a: Vector, b: Vector, sign: 1 | -1): Vector => [
  a[0] + sign * b[0],
  a[1] + sign * b[1],
  a[2] + sign * b[2],
]

const across = ({ right, up }: Directions): Vector[] => [
  right,
  up,
  unit(sum(right, up, 1)),
  unit(sum(right, up, -1)),
]

const overlap = (one: Outline, other: Outline): boolean =>
  one.every(([least, most], n) => least < other[n]![1] && other[n]![0] < most)

/** What is in front of each piece of a leaf, and how many are behind it, of the pairs that count. */
interface Relations {
  readonly inFront: readonly (readonly number[])[]
  readonly behind: number[]
}

const relationsOf = (
  count: number,
  pairs: readonly Vector[],
  toward: Vector,
  counts: (one: number, other: number) => boolean,
): Relations => {
  const behind = new Array<number>(count).fill(0)
  const inFront: number[][] = Array.from({ length: count }, () => [])
  let k = 0
  for (let one = 0; one < count; one++)
    for (let other = one + 1; other < count; other++, k++) {
      const facing = dot(pairs[k]!, toward)
      if (Math.abs(facing) < 1e-9 || !counts(one, other)) continue
      const [back, front] = facing > 0 ? [one, other] : [other, one]
      inFront[back]!.push(front)
      behind[front]!++
    }
  return { inFront, behind }
}

/**
 * The pieces in an order in which each comes after all that is behind it. Where there is none, as they are behind one
 * another in a ring, the piece comes next that has the fewest behind it, and `isRing` is true.
 */
const sorted = ({ inFront, behind }: Relations): { order: readonly number[]; isRing: boolean } => {
  const order: number[] = []
  const left = new Set(behind.keys())
  let isRing = false
  while (left.size > 0) {
    let next = -1
    for (const n of left) {
      if (next < 0 || behind[n]! < behind[next]!) next = n
      if (behind[next] === 0) break
    }
    isRing ||= behind[next]! > 0
    left.delete(next)
    order.push(next)
    for (const n of inFront[next]!) behind[n]!--
  }
  return { order, isRing }
}

/** The pieces of a leaf from the back to the front. */
const orderLeaf = (
  drawn: readonly Drawn[],
  pairs: readonly Vector[],
  directions: Directions,
  draw: (piece: Drawn) => void,
): void => {
  const { toward } = directions
  let found = sorted(relationsOf(drawn.length, pairs, toward, () => true))
  if (found.isRing) {
    // Pairs that do not overlap in the picture may close a ring that there is not.
    const ways = across(directions)
    const outlines = drawn.map(({ shape }): Outline => ways.map((way) => reachIn(shape, way)))
    const counts = (one: number, other: number): boolean => overlap(outlines[one]!, outlines[other]!)
    found = sorted(relationsOf(drawn.length, pairs, toward, counts))
  }
  for (const n of found.order) draw(drawn[n]!)
}

/** Walks through all pieces from the furthest to the nearest, as they are seen along these directions. */
export const walk = (posed: Posed, directions: Directions, draw: (piece: Drawn) => void): void => {
  if (posed.kind === 'leaf') {
    if (posed.drawn.length === 1) draw(posed.drawn[0]!)
    else orderLeaf(posed.drawn, posed.pairs, directions, draw)
    return
  }
  const isNearer = directions.toward[posed.axis] > 0
  walk(isNearer ? posed.before : posed.beyond, directions, draw)
  walk(isNearer ? posed.beyond : posed.before, directions, draw)
}
