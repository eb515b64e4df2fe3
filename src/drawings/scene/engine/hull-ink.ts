import type { PicturePoint } from '../../shared/paths.ts'
import { type Camera, isTiny, project } from './camera.ts'
import { drawMarks } from './mark-ink.ts'
import type { Pen } from './pen.ts'
import type { Face, FaceKind, Hull } from './piece.ts'
import { cross, dot, minus, unit, type Vector } from './vector.ts'

/** The light: from the viewer's left shoulder. Right, up, and toward the viewer. */
const light = unit([-0.34, 0.74, 0.58])

/** The tone of a face whose normal is this, 0 to 4. */
const toneOf = ({ right, up, toward }: Camera, normal: Vector): number => {
  const lit = light[0] * dot(right, normal) + light[1] * dot(up, normal) + light[2] * dot(toward, normal)
  return lit > 0.72 ? 0 : lit > 0.48 ? 1 : lit > 0.24 ? 2 : lit > 0 ? 3 : 4
}

/** How far apart the lines of a hatching are, in pixels, on a face that looks at the viewer. */
export const hatchStep = 6

/** Lines across a cut face, which turn with it: at 45 degrees in the face's own plane. */
const hatchingOf = (
  camera: Camera,
  hull: Hull,
  corners: readonly number[],
  normal: Vector,
): PicturePoint[] => {
  const level: Vector = Math.abs(normal[2]) > 0.9 ? [1, 0, 0] : unit(cross([0, 0, 1], normal))
  const across = unit(cross(normal, level))
  const slant = unit([level[0] + across[0], level[1] + across[1], level[2] + across[2]])
  const step = (hatchStep * camera.line) / camera.scale
  const loop = corners.map((corner) => hull.points[corner]!)
  const places = loop.map((point) => dot(point, slant))
  const lines: PicturePoint[] = []
  const [least, most] = [Math.min(...places), Math.max(...places)]
  for (let at = Math.ceil(least / step) * step; at < most; at += step) {
    const met: PicturePoint[] = []
    for (const [n, here] of places.entries()) {
      const there = places[(n + 1) % loop.length]!
      if (here <= at === there <= at) continue
      const share = (at - here) / (there - here)
      const [a, b] = [loop[n]!, loop[(n + 1) % loop.length]!]
      const from = minus(b, a)
      met.push(project(camera, [a[0] + from[0] * share, a[1] + from[1] * share, a[2] + from[2] * share]))
    }
    if (met.length === 2) lines.push(met[0]!, met[1]!)
  }
  return lines
}

/** Whether the surface goes on beyond a face's edges, so that they have no lines. */
const goesOn = (kind: FaceKind): boolean => kind === 'joint' || kind === 'flush'

/** What one sees of a hull: its faces, and the ends of its lines, by their places in the hull's lists. */
interface Seen {
  readonly faces: readonly Face[]
  readonly creases: readonly number[]
  readonly outline: readonly number[]
}

/** What is known of a hull: it never changes. */
interface Known {
  readonly isJoined: boolean
  /** What one sees of it, by which of its faces look at the viewer: it is the same as long as these do. */
  readonly seen: Map<number, Seen>
}

const known = new WeakMap<Hull, Known>()

const knownOf = (hull: Hull): Known => {
  const found = known.get(hull) ?? {
    isJoined: hull.faces.some(({ kind }) => goesOn(kind)),
    seen: new Map<number, Seen>(),
  }
  known.set(hull, found)
  return found
}

const isFacing = ({ normal }: Face, { toward }: Camera): boolean => dot(normal, toward) > 1e-6

const seenFrom = (hull: Hull, camera: Camera): Seen => {
  const facing = hull.faces.map((face) => isFacing(face, camera))
  const creases: number[] = []
  const outline: number[] = []
  for (const { from, to, faces, isSmooth } of hull.edges) {
    const [one, other] = faces
    if (faces.some((face) => goesOn(hull.faces[face]!.kind))) continue
    if (facing[one] && facing[other]) {
      if (!isSmooth) creases.push(from, to)
    } else if (facing[one] || facing[other]) outline.push(from, to)
  }
  return { faces: hull.faces.filter(({ kind }, n) => facing[n] && kind !== 'joint'), creases, outline }
}

/** What one sees of a hull from a camera: found once for each set of its faces, a binary digit each. */
const seenOf = (hull: Hull, { seen }: Known, camera: Camera): Seen => {
  let facing = 0
  for (const face of hull.faces) facing = facing * 2 + (isFacing(face, camera) ? 1 : 0)
  const found = seen.get(facing) ?? seenFrom(hull, camera)
  seen.set(facing, found)
  return found
}

/** Draws a solid as a camera sees it; what is wrong is hatched. */
export const drawHull = (camera: Camera, hull: Hull, pen: Pen, isWrong: boolean): void => {
  const about = knownOf(hull)
  const { faces, creases, outline } = seenOf(hull, about, camera)
  const points = hull.points.map((point) => project(camera, point))
  const at = (corner: number): PicturePoint => points[corner]!
  const byTone: PicturePoint[][][] = [[], [], [], [], []]
  for (const face of faces) byTone[toneOf(camera, face.normal)]!.push(face.corners.map(at))
  for (let tone = 0; tone < byTone.length; tone++)
    if (byTone[tone]!.length > 0) pen.fill(tone, byTone[tone]!, about.isJoined)
  const hatching: PicturePoint[] = []
  for (const { corners, normal, kind, marks } of faces) {
    if (kind === 'cut' || isWrong) hatching.push(...hatchingOf(camera, hull, corners, normal))
    if (marks.length > 0) drawMarks(camera, marks, pen)
  }
  if (hatching.length > 0) pen.lines(isWrong ? 'wrong' : 'hatching', hatching)
  if (creases.length > 0 && !isTiny(camera)) pen.lines('crease', creases.map(at))
  if (outline.length > 0) pen.lines('outline', outline.map(at))
}
