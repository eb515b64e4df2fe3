import { cross, dot, minus, unit, type Vector } from './vector.ts'

/** What a piece is made of, and so in which tones it is drawn. */
export type Material = 'frame' | 'metal' | 'card' | 'felt' | 'belt'

/** What is on a face: a hole, one that is torn or blocked, an opening into the dark, or a line. */
export interface Mark {
  readonly look: 'hole' | 'torn' | 'blocked' | 'opening' | 'line'
  readonly points: readonly Vector[]
  /** The lines round it that are not drawn, each by the point at which it begins: it goes on over a joint there. */
  readonly open?: readonly number[]
}

/**
 * What a face shows: a surface, a surface that goes on in the next piece without lines round it, a cut that is hatched, or
 * a joint with the next piece of the same solid.
 */
export type FaceKind = 'surface' | 'flush' | 'cut' | 'joint'

/** A face of a hull: its corners, counter-clockwise seen from outside, by their places in the hull's list. */
interface Face {
  readonly corners: readonly number[]
  readonly normal: Vector
  readonly kind: FaceKind
  readonly marks: readonly Mark[]
}

/** An edge between two faces, by their places in the hull's list. */
interface Edge {
  readonly from: number
  readonly to: number
  readonly faces: readonly [number, number]
  /** Whether the surface goes round here without a line, as on a cylinder. */
  readonly isSmooth: boolean
}

/** A convex solid. */
export interface Hull {
  readonly kind: 'hull'
  readonly points: readonly Vector[]
  readonly faces: readonly Face[]
  readonly edges: readonly Edge[]
}

/** A short round wire of one tone. */
export interface Wire {
  readonly kind: 'wire'
  readonly ends: readonly [Vector, Vector]
  readonly radius: number
  /** Whether an end goes on as another piece of the same wire. */
  readonly joined: readonly [boolean, boolean]
}

/** A coil spring between two points. */
export interface Coil {
  readonly kind: 'coil'
  readonly ends: readonly [Vector, Vector]
  readonly radius: number
  readonly turns: number
}

export type Shape = Hull | Wire | Coil

const anglesSmooth = Math.cos(Math.PI / 5)

/** The edges of a solid of these faces. */
const edgesOf = (faces: readonly Face[]): Edge[] => {
  const open = new Map<number, { from: number; to: number; face: number }>()
  const edges: Edge[] = []
  for (const [n, { corners }] of faces.entries())
    for (const [k, from] of corners.entries()) {
      const to = corners[(k + 1) % corners.length]!
      const key = Math.min(from, to) * 4096 + Math.max(from, to)
      const other = open.get(key)
      if (!other) {
        open.set(key, { from, to, face: n })
        continue
      }
      const isSmooth = dot(faces[other.face]!.normal, faces[n]!.normal) > anglesSmooth
      edges.push({ from: other.from, to: other.to, faces: [other.face, n], isSmooth })
    }
  return edges
}

/** A face as it is made: without its normal. */
export interface FaceDraft {
  readonly corners: readonly number[]
  readonly kind?: FaceKind
  readonly marks?: readonly Mark[]
}

/** The direction in which a face with these corners looks (Newell's method). */
const normalOf = (corners: readonly Vector[]): Vector => {
  let [x, y, z] = [0, 0, 0]
  const first = corners[0]!
  for (const [n, corner] of corners.entries()) {
    const area = cross(minus(corner, first), minus(corners[(n + 1) % corners.length]!, first))
    x += area[0]
    y += area[1]
    z += area[2]
  }
  return unit([x, y, z])
}

/** A convex solid of these corners and faces. */
export const hullOf = (points: readonly Vector[], drafts: readonly FaceDraft[]): Hull => {
  const faces = drafts.map(({ corners, kind = 'surface', marks = [] }): Face => {
    return { corners, normal: normalOf(corners.map((corner) => points[corner]!)), kind, marks }
  })
  return { kind: 'hull', points, faces, edges: edgesOf(faces) }
}

/** What a prism's sides show, where it is not a surface: its first end, its last end, and its sides by their number. */
export interface PrismLook {
  readonly first?: Omit<FaceDraft, 'corners'>
  readonly last?: Omit<FaceDraft, 'corners'>
  readonly sides?: Readonly<Record<number, Omit<FaceDraft, 'corners'>>>
}

/**
 * A prism between two outlines with as many corners, each of which has its partner in the other. The first outline is
 * clockwise seen from outside, where its last one is counter-clockwise; side n begins at corner n.
 */
export const prism = (first: readonly Vector[], last: readonly Vector[], look: PrismLook = {}): Hull => {
  const count = first.length
  const ring = Array.from({ length: count }, (_, n) => n)
  return hullOf(
    [...first, ...last],
    [
      { corners: ring.toReversed(), ...look.first },
      { corners: ring.map((n) => n + count), ...look.last },
      ...ring.map((n) => ({
        corners: [n, (n + 1) % count, ((n + 1) % count) + count, n + count],
        ...look.sides?.[n],
      })),
    ],
  )
}

/** The sides of a box by their names. */
type Side = 'left' | 'right' | 'front' | 'back' | 'bottom' | 'top'

/** What a box's sides show. */
export type BoxLook = Readonly<Partial<Record<Side, Omit<FaceDraft, 'corners'>>>>

/** A box between two opposite corners, the first of them with the lesser of each coordinate. */
export const box = (from: Vector, to: Vector, look: BoxLook = {}): Hull => {
  const [x0, y0, z0] = from
  const [x1, y1, z1] = to
  const level = (z: number): Vector[] => [
    [x0, y0, z],
    [x1, y0, z],
    [x1, y1, z],
    [x0, y1, z],
  ]
  const { front = {}, right = {}, back = {}, left = {} } = look
  return prism(level(z0), level(z1), {
    first: look.bottom ?? {},
    last: look.top ?? {},
    sides: { 0: front, 1: right, 2: back, 3: left },
  })
}

/** A prism along the bed of an outline seen from the right, counter-clockwise: to the back, and up. */
export const along = (
  outline: readonly (readonly [back: number, up: number])[],
  from: number,
  to: number,
  look: PrismLook = {},
): Hull => {
  const at = (x: number): Vector[] => outline.map(([back, up]) => [x, back, up])
  return prism(at(from), at(to), look)
}

/** A prism from the back to the front of an outline seen from the front, counter-clockwise: to the right, and up. */
export const facing = (
  outline: readonly (readonly [right: number, up: number])[],
  front: number,
  back: number,
  look: PrismLook = {},
): Hull => {
  const at = (y: number): Vector[] => outline.map(([right, up]) => [right, y, up])
  return prism(at(back), at(front), look)
}

/** A wire between two points; `joined` says which ends go on as another piece. */
export const wire = (
  from: Vector,
  to: Vector,
  radius: number,
  joined: readonly [boolean, boolean] = [false, false],
): Wire => ({ kind: 'wire', ends: [from, to], radius, joined })

/** A wire bent at the points between its ends, as one piece for each straight stretch. */
export const bentWire = (
  points: readonly Vector[],
  radius: number,
  joined: readonly [boolean, boolean] = [false, false],
): Wire[] =>
  points
    .slice(1)
    .map((to, n) => wire(points[n]!, to, radius, [n > 0 || joined[0], n < points.length - 2 || joined[1]]))

/** Points as three numbers each. */
export const flat = (points: readonly Vector[]): Float64Array => {
  const numbers = new Float64Array(3 * points.length)
  for (const [n, point] of points.entries()) numbers.set(point, 3 * n)
  return numbers
}

/** A shape moved by so much. */
export const moved = <Moved extends Shape>(shape: Moved, [right, back, up]: Vector): Moved => {
  const by = ([x, y, z]: Vector): Vector => [x + right, y + back, z + up]
  const onFace = (face: Face): Face => ({
    ...face,
    marks: face.marks.map((mark) => ({ ...mark, points: mark.points.map(by) })),
  })
  return shape.kind === 'hull'
    ? { ...shape, points: shape.points.map(by), faces: shape.faces.map(onFace) }
    : { ...shape, ends: [by(shape.ends[0]), by(shape.ends[1])] }
}

/** A shape by itself: a surface where it was joined to another. */
export const closed = (shape: Shape): Shape =>
  shape.kind === 'hull'
    ? {
        ...shape,
        faces: shape.faces.map((face) => (face.kind === 'joint' ? { ...face, kind: 'surface' } : face)),
      }
    : shape

/** A coil spring between two points. */
export const coil = (from: Vector, to: Vector, radius: number, turns: number): Coil => ({
  kind: 'coil',
  ends: [from, to],
  radius,
  turns,
})
