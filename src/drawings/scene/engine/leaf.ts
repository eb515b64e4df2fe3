import type { Directions } from './camera.ts'
import { type Extent, reachIn } from './extent.ts'
import type { Shape } from './piece.ts'
import { separationByRoom, separationOf } from './separate.ts'
import { dot, unit, type Vector } from './vector.ts'

/** What is drawn of a pose: a piece of the machine by its place in the list, and its shape or the part of it meant. */
export interface Drawn {
  readonly piece: number
  readonly shape: Shape
}

/** A piece in a leaf, and the room that it takes. */
export interface Placed extends Drawn {
  readonly extent: Extent
}

/**
 * A few pieces that no plane parts. For each pair of them, how they are apart: a number that `separationByRoom` gives, or
 * from `roomNumbers` on a way of the leaf's own in which one is wholly before the other, twice its place in the list, and
 * one more where it goes from the second to the first.
 */
export interface Leaf {
  readonly kind: 'leaf'
  readonly drawn: readonly Placed[]
  readonly ways: readonly Vector[]
  readonly pairs: Uint16Array
  /** The orders that were found, by which of the ways go toward the viewer: they are the same as long as these are. */
  readonly orders: Map<string, Order>
  /** Which of the axes and of the ways went toward the viewer last, 1, or away, -1, and the order then. */
  readonly facing: Int8Array
  last: Order | null
}

/** How many numbers there are by which room is apart. */
const roomNumbers = 27

/**
 * Pieces from the back to the front. Where there is no such order, as they are behind one another in a ring, the piece
 * comes next that has the fewest behind it, and `isRing` is true.
 */
interface Order {
  readonly order: readonly number[]
  readonly isRing: boolean
}

/** Ways whose parts differ by less than this are one. */
const alike = 1e-7

/** The number of a way of a leaf; a new one is added. */
const numberOf = (ways: Vector[], [x, y, z]: Vector): number => {
  for (const [n, way] of ways.entries()) {
    const isSame = (sign: 1 | -1): boolean =>
      Math.abs(way[0] - sign * x) + Math.abs(way[1] - sign * y) + Math.abs(way[2] - sign * z) < alike
    if (isSame(1)) return roomNumbers + 2 * n
    if (isSame(-1)) return roomNumbers + 2 * n + 1
  }
  ways.push([x, y, z])
  return roomNumbers + 2 * (ways.length - 1)
}

/** A way by its number, from the first piece to the second. */
const wayOf = (ways: readonly Vector[], number: number): Vector => {
  const [x, y, z] = ways[(number - roomNumbers) >> 1]!
  return (number - roomNumbers) % 2 === 0 ? [x, y, z] : [-x, -y, -z]
}

const isAlike = (leaf: Leaf, drawn: readonly Placed[]): boolean =>
  leaf.drawn.length === drawn.length && leaf.drawn.every(({ piece }, n) => piece === drawn[n]!.piece)

/** The leaf of these pieces; what it has in common with one that was there before is not computed again. */
export const leafOf = (drawn: readonly Placed[], last?: Leaf): Leaf => {
  const count = drawn.length
  const before = last && isAlike(last, drawn) ? last : null
  const isKept = drawn.map(({ shape }, n) => before?.drawn[n]!.shape === shape)
  const ways: Vector[] = []
  const pairs = new Uint16Array((count * (count - 1)) / 2)
  let k = 0
  for (let one = 0; one < count; one++)
    for (let other = one + 1; other < count; other++, k++) {
      const known = before && isKept[one] && isKept[other] ? before.pairs[k]! : null
      const [first, second] = [drawn[one]!, drawn[other]!]
      if (before && known !== null)
        pairs[k] = known < roomNumbers ? known : numberOf(ways, wayOf(before.ways, known))
      else
        pairs[k] =
          separationByRoom(first.extent, second.extent) ||
          numberOf(ways, separationOf(first.shape, second.shape).direction)
    }
  return {
    kind: 'leaf',
    drawn,
    ways,
    pairs,
    orders: new Map(),
    facing: new Int8Array(3 + ways.length),
    last: null,
  }
}

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

/** Which way something goes along the view: toward the viewer, 1, or away, -1; 0 where it does neither. */
const sideOf = (along: number): -1 | 0 | 1 => (Math.abs(along) < 1e-9 ? 0 : along > 0 ? 1 : -1)

/**
 * For each number of a pair, which is nearer to the viewer: the second, 1, or the first, -1; 0 where neither covers the
 * other, since it is before it in one way and beyond it in another.
 */
const sidesOf = (ways: readonly Vector[], toward: Vector): Int8Array => {
  const sides = new Int8Array(roomNumbers + 2 * ways.length)
  for (let number = 1; number < roomNumbers; number++) {
    const found = ([0, 1, 2] as const).map((axis) => {
      const digit = Math.floor(number / 3 ** axis) % 3
      return digit === 0 ? 0 : digit === 1 ? sideOf(toward[axis]) : sideOf(-toward[axis])
    })
    const [least, most] = [Math.min(...found), Math.max(...found)]
    sides[number] = least < 0 && most > 0 ? 0 : least + most
  }
  for (const [n, way] of ways.entries()) {
    const side = sideOf(dot(way, toward))
    sides[roomNumbers + 2 * n] = side
    sides[roomNumbers + 2 * n + 1] = -side
  }
  return sides
}

const relationsOf = (
  { drawn: { length: count }, pairs }: Leaf,
  sides: Int8Array,
  counts: (one: number, other: number) => boolean,
): Relations => {
  const behind = new Array<number>(count).fill(0)
  const inFront: number[][] = Array.from({ length: count }, () => [])
  let k = 0
  for (let one = 0; one < count; one++)
    for (let other = one + 1; other < count; other++, k++) {
      const side = sides[pairs[k]!]!
      if (side === 0 || !counts(one, other)) continue
      const [back, front] = side > 0 ? [one, other] : [other, one]
      inFront[back]!.push(front)
      behind[front]!++
    }
  return { inFront, behind }
}

const sorted = ({ inFront, behind }: Relations): Order => {
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

/** The order of a leaf's pieces where only those are ordered that overlap in the picture: others may close a ring. */
const orderOfOverlapping = (leaf: Leaf, sides: Int8Array, directions: Directions): Order => {
  const ways = across(directions)
  const outlines = leaf.drawn.map(({ shape }): Outline => ways.map((way) => reachIn(shape, way)))
  return sorted(relationsOf(leaf, sides, (one, other) => overlap(outlines[one]!, outlines[other]!)))
}

/** Writes which of a leaf's ways go toward the viewer; whether they are others than before. */
const faceTo = ({ ways, facing }: Leaf, toward: Vector): boolean => {
  let isOther = false
  const write = (n: number, side: -1 | 0 | 1): void => {
    isOther ||= facing[n] !== side
    facing[n] = side
  }
  for (const axis of [0, 1, 2] as const) write(axis, sideOf(toward[axis]))
  for (let n = 0; n < ways.length; n++) write(3 + n, sideOf(dot(ways[n]!, toward)))
  return isOther
}

/** The order of a leaf's pieces as all its pairs are, found once for each way of facing the viewer. */
const orderOf = (leaf: Leaf, toward: Vector): Order => {
  const isOther = faceTo(leaf, toward)
  if (leaf.last && !isOther) return leaf.last
  const key = leaf.facing.join()
  const found = leaf.orders.get(key) ?? sorted(relationsOf(leaf, sidesOf(leaf.ways, toward), () => true))
  leaf.orders.set(key, found)
  leaf.last = found
  return found
}

/** Draws the pieces of a leaf from the back to the front. */
export const orderLeaf = (leaf: Leaf, directions: Directions, draw: (piece: Drawn) => void): void => {
  const { toward } = directions
  const found = orderOf(leaf, toward)
  const { order } = found.isRing ? orderOfOverlapping(leaf, sidesOf(leaf.ways, toward), directions) : found
  for (const n of order) draw(leaf.drawn[n]!)
}
