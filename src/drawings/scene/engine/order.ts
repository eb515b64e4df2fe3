import type { Directions } from './camera.ts'
import { cut, type Plane, type Section, sectionOf } from './cut.ts'
import { extentOf } from './extent.ts'
import { type Drawn, type Leaf, leafOf, orderLeaf, type Placed } from './leaf.ts'
import type { Shape } from './piece.ts'
import { parted, type Tree } from './tree.ts'

/** A plane of a tree with the pieces of one pose on either side of it. */
interface Parting {
  readonly kind: 'plane'
  readonly axis: 0 | 1 | 2
  readonly before: Posed
  readonly beyond: Posed
}

/** A tree with the pieces of one pose in it. */
export type Posed = Leaf | Parting

/** A piece on its way through the tree, with the halves that planes have made of it. */
interface Going extends Placed {
  readonly halves: Map<Plane, readonly [Going, Going]>
}

/** What was computed of a shape: shapes never change, and most of a machine is the same from pose to pose. */
interface Known {
  going: Going
  readonly sections: Map<string, Shape | null>
}

const known = new WeakMap<Shape, Known>()

const goingOf = (piece: number, shape: Shape): Going => ({
  piece,
  shape,
  extent: extentOf(shape),
  halves: new Map(),
})

const knownOf = (piece: number, shape: Shape): Known => {
  const found = known.get(shape) ?? { going: goingOf(piece, shape), sections: new Map() }
  if (found.going.piece !== piece) found.going = goingOf(piece, shape)
  known.set(shape, found)
  return found
}

/** What these sections leave of a shape, one after the other. */
const sectionNow = (piece: number, shape: Shape, sections: readonly Section[]): Shape | null =>
  sections.reduce<Shape | null>((left, section) => {
    if (!left) return null
    const { sections: cuts } = knownOf(piece, left)
    const key = `${section.axis} ${section.at} ${section.shows}`
    const found = cuts.get(key)
    if (found !== undefined) return found
    const cutOff = sectionOf(left, section)
    cuts.set(key, cutOff)
    return cutOff
  }, shape)

const halvesOf =
  (plane: Plane) =>
  ({ piece, shape, halves }: Going): readonly [Going, Going] => {
    const found = halves.get(plane)
    if (found) return found
    const [near, far] = cut(shape, plane)
    const made = [goingOf(piece, near), goingOf(piece, far)] as const
    halves.set(plane, made)
    return made
  }

/** What came to a place of a tree last, and what was made of it. */
interface Kept {
  readonly items: readonly Going[]
  readonly posed: Posed
}

/** What came last before and beyond the planes of a tree: where the same comes again, nothing is made. */
const kept = new WeakMap<object, { before?: Kept; beyond?: Kept }>()

const isSame = (items: readonly Going[], others: readonly Going[]): boolean =>
  items.length === others.length && items.every((item, n) => item === others[n])

type Node = NonNullable<Tree>

/** What is on one side of a plane of the tree. */
const poseOn = (side: 'before' | 'beyond', node: Node, items: readonly Going[]): Posed => {
  const places = kept.get(node) ?? {}
  const last = places[side]
  if (last && isSame(last.items, items)) return last.posed
  const posed = pose(node[side], items, last?.posed.kind === 'leaf' ? last.posed : undefined)
  places[side] = { items, posed }
  kept.set(node, places)
  return posed
}

const pose = (tree: Tree, items: readonly Going[], last?: Leaf): Posed => {
  if (!tree || items.length < 2) return leafOf(items, last)
  const { plane } = tree
  const [before, beyond] = parted(items, plane, halvesOf(plane))
  if (before.length === 0) return poseOn('beyond', tree, beyond)
  if (beyond.length === 0) return poseOn('before', tree, before)
  return {
    kind: 'plane',
    axis: plane.axis,
    before: poseOn('before', tree, before),
    beyond: poseOn('beyond', tree, beyond),
  }
}

/**
 * Puts the pieces of a pose into a tree. Pieces that are not shown are null. Of the others what the sections leave is
 * shown.
 */
export const posedIn = (
  tree: Tree,
  shapes: readonly (Shape | null)[],
  sections: readonly Section[] = [],
): Posed =>
  pose(
    tree,
    shapes.flatMap((whole, piece): Going[] => {
      const shape = whole && sectionNow(piece, whole, sections)
      return shape ? [knownOf(piece, shape).going] : []
    }),
  )

/** Walks through all pieces from the furthest to the nearest, as they are seen along these directions. */
export const walk = (posed: Posed, directions: Directions, draw: (piece: Drawn) => void): void => {
  if (posed.kind === 'leaf') {
    if (posed.drawn.length === 1) draw(posed.drawn[0]!)
    else orderLeaf(posed, directions, draw)
    return
  }
  const isNearer = directions.toward[posed.axis] > 0
  walk(isNearer ? posed.before : posed.beyond, directions, draw)
  walk(isNearer ? posed.beyond : posed.before, directions, draw)
}
