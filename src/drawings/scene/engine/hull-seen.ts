import { type Camera, projectAll } from './camera.ts'
import { joinedCourses } from './course.ts'
import type { Course, Places } from './pen.ts'
import { type FaceKind, flat, type Hull } from './piece.ts'
import { dot, unit, type Vector } from './vector.ts'

/** Whether the surface goes on beyond a face's edges, so that they have no lines. */
const goesOn = (kind: FaceKind): boolean => kind === 'joint' || kind === 'flush'

/** What one sees of a hull: its faces by their count in the hull's list, and its lines. */
interface Seen {
  readonly faces: readonly number[]
  readonly creases: readonly Course[]
  readonly outline: readonly Course[]
}

/**
 * What one sees of hulls whose faces and edges are the same, wherever their corners are, by which of the faces look at the
 * viewer: a binary digit each.
 */
type SeenByFacing = Map<number, Seen>

/** The ways round faces, by their tone. */
export type Fills = readonly (readonly [tone: number, loops: readonly Course[]])[]

/** What is known of a hull, which never changes, and what was seen of it last. */
interface Known {
  readonly hull: Hull
  /** Its corners, and the normals of its faces: three numbers each. */
  readonly points: Float64Array
  readonly normals: Float64Array
  /** Which way each of its corners goes at a joint with the next piece; null where it has no joint. */
  readonly joins: Float64Array | null
  readonly isFlush: boolean
  /** Whether there is something on its faces. */
  readonly isBusy: boolean
  readonly seen: SeenByFacing
  facing: number
  last: Seen
  /** The tones of these faces, a digit to the base of five each, and the faces by their tone. */
  tones: number
  toned: readonly number[]
  fills: Fills
}

const nothing: Seen = { faces: [], creases: [], outline: [] }

const known = new WeakMap<Hull, Known>()

const builds = new Map<string, SeenByFacing>()

/** What was seen of the hulls with this one's faces and edges. */
const seenOfBuild = ({ faces, edges }: Hull): SeenByFacing => {
  const build = [
    ...faces.map(({ kind }) => (kind === 'joint' ? 2 : goesOn(kind) ? 1 : 0)),
    ...edges.map(
      ({ from, to, faces: [one, other], isSmooth }) => `${from} ${to} ${one} ${other} ${isSmooth}`,
    ),
  ].join()
  const found = builds.get(build) ?? new Map<number, Seen>()
  builds.set(build, found)
  return found
}

/** Which way each corner of a hull goes at its joints. */
const joinsOf = ({ points, faces }: Hull): Float64Array | null => {
  const joints = faces.filter(({ kind }) => kind === 'joint')
  if (joints.length === 0) return null
  const ways = points.map((_, corner) =>
    joints
      .filter(({ corners }) => corners.includes(corner))
      .reduce<Vector>(([x, y, z], { normal }) => [x + normal[0], y + normal[1], z + normal[2]], [0, 0, 0]),
  )
  return flat(ways.map(unit))
}

/** What is known of a hull. */
export const knownOf = (hull: Hull): Known => {
  const found = known.get(hull)
  if (found) return found
  const made: Known = {
    hull,
    points: flat(hull.points),
    normals: flat(hull.faces.map(({ normal }) => normal)),
    joins: joinsOf(hull),
    isFlush: hull.faces.some(({ kind }) => kind === 'flush'),
    isBusy: hull.faces.some(({ kind, marks }) => kind === 'cut' || marks.length > 0),
    seen: seenOfBuild(hull),
    facing: -1,
    last: nothing,
    tones: -1,
    toned: [],
    fills: [],
  }
  known.set(hull, made)
  return made
}

/** From which slope toward the viewer on a face is seen. */
const least = 1e-6

const seenFrom = ({ faces, edges }: Hull, toward: Vector): Seen => {
  const facing = faces.map(({ normal }) => dot(normal, toward) > least)
  const creases: number[] = []
  const outline: number[] = []
  for (const { from, to, faces: sides, isSmooth } of edges) {
    const [one, other] = sides
    if (sides.some((side) => goesOn(faces[side]!.kind))) continue
    if (facing[one] && facing[other]) {
      if (!isSmooth) creases.push(from, to)
    } else if (facing[one] || facing[other]) outline.push(from, to)
  }
  return {
    faces: faces.flatMap(({ kind }, n) => (facing[n] && kind !== 'joint' ? [n] : [])),
    creases: joinedCourses(creases),
    outline: joinedCourses(outline),
  }
}

/** What one sees of a hull along a direction. */
export const seenOf = (about: Known, toward: Vector): Seen => {
  const { normals } = about
  let facing = 0
  for (let n = 0; n < normals.length; n += 3) {
    const along = normals[n]! * toward[0] + normals[n + 1]! * toward[1] + normals[n + 2]! * toward[2]
    facing = facing * 2 + (along > least ? 1 : 0)
  }
  if (facing === about.facing) return about.last
  const found = about.seen.get(facing) ?? seenFrom(about.hull, toward)
  about.seen.set(facing, found)
  Object.assign(about, { facing, last: found })
  return found
}

/** How many corners there is room for at first. */
const room = 64

/** How far a hull goes over a joint into the next piece, in pixels, so that no gap is seen there, and the least slope. */
const [over, leastSlope] = [0.4, 0.2]

/**
 * Gives where the corners of one hull after the other are in the picture; the places of the last are written over. Where
 * it goes over joints, a hull reaches a little into the next piece.
 */
export const hullPlaces = (camera: Camera, goesOver: boolean): ((about: Known) => Places) => {
  const { right, up, line } = camera
  let places = new Float64Array(2 * room)
  return ({ points, joins }) => {
    if (places.length < points.length) places = new Float64Array(points.length)
    projectAll(camera, points, places)
    if (!joins || !goesOver) return places
    for (let from = 0, to = 0; from < joins.length; from += 3, to += 2) {
      const [x, y, z] = [joins[from]!, joins[from + 1]!, joins[from + 2]!]
      const [across, high] = [right[0] * x + right[1] * y + right[2] * z, up[0] * x + up[1] * y + up[2] * z]
      const far = (over * line) / Math.max(leastSlope, Math.sqrt(across * across + high * high))
      places[to] = places[to]! + far * across
      places[to + 1] = places[to + 1]! - far * high
    }
    return places
  }
}
