import { canBeCut, cut, type Plane } from './cut.ts'
import { type Extent, extentOf, extentOfAll } from './extent.ts'
import type { Shape } from './piece.ts'

/** A tree of planes that part the pieces of a machine, however its parts move; a leaf is null. */
export type Tree = {
  readonly plane: Plane
  readonly before: Tree
  readonly beyond: Tree
} | null

/** What a plane parts: the room that a piece takes, and its shape where it may be cut. */
export interface Item {
  readonly extent: Extent
  readonly shape: Shape | null
}

/** How far a piece may reach past a plane and still count as on one side, in mm. */
const tolerance = 0.011

/** How much a cut is worth against an uneven tree. */
const costOfCut = 6

const isBefore = ({ extent }: Item, { axis, at }: Plane): boolean => extent.most[axis] <= at + tolerance
const isBeyond = ({ extent }: Item, { axis, at }: Plane): boolean => extent.least[axis] >= at - tolerance

/** How many of these sorted numbers are less than a limit, or equal to it. */
const countTo = (sorted: Float64Array, limit: number): number => {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]! <= limit) low = middle + 1
    else high = middle
  }
  return low
}

interface Choice {
  readonly plane: Plane
  readonly cost: number
}

const mayBeCut = ({ shape }: Item, axis: 0 | 1 | 2): boolean => shape !== null && canBeCut(shape, axis)

/** The best plane across an axis: it cuts nothing that moves, and little else, and has about as much on either side. */
const bestAcross = (items: readonly Item[], axis: 0 | 1 | 2): Choice | null => {
  const sorted = (list: readonly Item[], side: 'least' | 'most'): Float64Array =>
    Float64Array.from(list, ({ extent }) => extent[side][axis]).sort()
  const whole = items.filter((item) => !mayBeCut(item, axis))
  const [ends, starts] = [sorted(items, 'most'), sorted(items, 'least')]
  const [wholeEnds, wholeStarts] = [sorted(whole, 'most'), sorted(whole, 'least')]
  const through = (from: Float64Array, to: Float64Array, at: number): number =>
    countTo(from, at - tolerance - 1e-9) - countTo(to, at + tolerance)
  let best: Choice | null = null
  let last = NaN
  for (const at of [...ends, ...starts].sort((a, b) => a - b)) {
    if (at === last) continue
    last = at
    if (through(wholeStarts, wholeEnds, at) > 0) continue
    const before = countTo(ends, at + tolerance)
    const beyond = items.length - countTo(starts, at - tolerance - 1e-9)
    const cost = Math.max(0, through(starts, ends, at)) * costOfCut + Math.max(before, beyond)
    if (best && cost >= best.cost) continue
    const plane: Plane = { axis, at }
    // What is thinner than the tolerance was counted on either side.
    if (items.every((item) => !isBeyond(item, plane) || isBefore(item, plane))) continue
    if (items.every((item) => !isBefore(item, plane))) continue
    best = { plane, cost }
  }
  return best
}

/** The best plane for these items; null where they are better ordered pair by pair. */
const search = (items: readonly Item[]): Plane | null => {
  if (items.length < 2) return null
  let best: Choice | null = null
  for (const axis of [0, 1, 2] as const) {
    const choice = bestAcross(items, axis)
    if (choice && (!best || choice.cost < best.cost)) best = choice
  }
  // A few pieces are ordered pair by pair more cheaply than cut.
  return !best || (items.length <= 6 && best.cost > items.length) ? null : best.plane
}

/**
 * Parts items by a plane; `halves` gives the two parts of one that it goes through. What can't be cut is wholly on the side
 * on which most of it is.
 */
export const parted = <Parted extends Item>(
  items: readonly Parted[],
  plane: Plane,
  halves: (item: Parted) => readonly [Parted, Parted],
): [before: Parted[], beyond: Parted[]] => {
  const before: Parted[] = []
  const beyond: Parted[] = []
  for (const item of items)
    if (isBefore(item, plane)) before.push(item)
    else if (isBeyond(item, plane)) beyond.push(item)
    else if (mayBeCut(item, plane.axis)) {
      const [near, far] = halves(item)
      before.push(near)
      beyond.push(far)
    } else {
      const { least, most } = item.extent
      const isNear = (least[plane.axis] + most[plane.axis]) / 2 <= plane.at
      ;(isNear ? before : beyond).push(item)
    }
  return [before, beyond]
}

const halvesOf =
  (plane: Plane) =>
  (item: Item): readonly [Item, Item] => {
    if (!item.shape) return [item, item]
    const [near, far] = cut(item.shape, plane)
    return [
      { shape: near, extent: extentOf(near) },
      { shape: far, extent: extentOf(far) },
    ]
  }

const grow = (items: readonly Item[]): Tree => {
  const plane = search(items)
  if (!plane) return null
  const [before, beyond] = parted(items, plane, halvesOf(plane))
  return { plane, before: grow(before), beyond: grow(beyond) }
}

/** Whether two shapes of one piece are at the same place. */
const isSame = (one: Shape, other: Shape): boolean => {
  const [points, others] = [one, other].map((shape) => (shape.kind === 'hull' ? shape.points : shape.ends))
  return points!.every((point, n) => point.every((place, axis) => place === others![n]![axis]))
}

/**
 * The tree of a machine whose pieces are at these places in some poses that go as far as each part goes: every pose has
 * all pieces, in the same order, null for one that is not there. What is alike in all of them may be cut by a plane.
 */
export const treeOf = (poses: readonly (readonly (Shape | null)[])[]): Tree => {
  const count = poses[0]?.length ?? 0
  const items: Item[] = []
  for (let piece = 0; piece < count; piece++) {
    const shapes = poses.flatMap((pose) => pose[piece] ?? [])
    const first = shapes[0]
    if (!first) continue
    const isFixed = shapes.length === poses.length && shapes.every((shape) => isSame(shape, first))
    items.push({ extent: extentOfAll(shapes.map(extentOf)), shape: isFixed ? first : null })
  }
  return grow(items)
}
