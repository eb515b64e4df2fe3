import type { PicturePoint } from '../../shared/paths.ts'
import { type Camera, isTiny, project } from './camera.ts'
import { pairedCourses } from './course.ts'
import { type Fills, hullPlaces, knownOf, seenOf } from './hull-seen.ts'
import { drawMarks } from './mark-ink.ts'
import type { Course, Pen } from './pen.ts'
import type { Hull } from './piece.ts'
import { between, cross, dot, unit, type Vector } from './vector.ts'

/** The light: from the viewer's left shoulder. Right, up, and toward the viewer. */
const light = unit([-0.34, 0.74, 0.58])

/** The direction of the light in the machine, for a camera. */
const lightFor = ({ right, up, toward }: Camera): Vector => {
  const along = (axis: 0 | 1 | 2): number =>
    light[0] * right[axis] + light[1] * up[axis] + light[2] * toward[axis]
  return [along(0), along(1), along(2)]
}

/** How much the light lights one of some faces, whose normals are three numbers each. */
const litOf = (lit: Vector, normals: Float64Array, face: number): number =>
  lit[0] * normals[3 * face]! + lit[1] * normals[3 * face + 1]! + lit[2] * normals[3 * face + 2]!

/** The tone of a face that is lit by so much, 0 to 4. */
const toneOf = (lit: number): number => (lit > 0.72 ? 0 : lit > 0.48 ? 1 : lit > 0.24 ? 2 : lit > 0 ? 3 : 4)

/** How far apart the lines of a hatching are, in pixels, on a face that looks at the viewer. */
export const hatchStep = 6

/** Adds lines across a cut face, which turn with it: at 45 degrees in the face's own plane, four numbers each. */
const hatch = (
  camera: Camera,
  hull: Hull,
  corners: readonly number[],
  normal: Vector,
  lines: number[],
): void => {
  const level: Vector = Math.abs(normal[2]) > 0.9 ? [1, 0, 0] : unit(cross([0, 0, 1], normal))
  const across = unit(cross(normal, level))
  const slant = unit([level[0] + across[0], level[1] + across[1], level[2] + across[2]])
  const step = (hatchStep * camera.line) / camera.scale
  const loop = corners.map((corner) => hull.points[corner]!)
  const places = loop.map((point) => dot(point, slant))
  const [least, most] = [Math.min(...places), Math.max(...places)]
  for (let at = Math.ceil(least / step) * step; at < most; at += step) {
    const met: PicturePoint[] = []
    for (const [n, here] of places.entries()) {
      const next = (n + 1) % loop.length
      const there = places[next]!
      if (here <= at === there <= at) continue
      met.push(project(camera, between(loop[n]!, loop[next]!, (at - here) / (there - here))))
    }
    if (met.length === 2) lines.push(...met[0]!, ...met[1]!)
  }
}

/** The ways round a hull's faces that one sees, by their tone. */
const fillsOf = (hull: Hull, normals: Float64Array, faces: readonly number[], lit: Vector): Fills => {
  const byTone: Course[][] = [[], [], [], [], []]
  for (const face of faces) byTone[toneOf(litOf(lit, normals, face))]!.push(hull.faces[face]!.corners)
  return [...byTone.entries()].filter(([, loops]) => loops.length > 0)
}

/** Draws solids as a camera sees them; what is wrong is hatched. */
export const hullInk = (camera: Camera, pen: Pen): ((hull: Hull, isWrong: boolean) => void) => {
  const lit = lightFor(camera)
  const hasCreases = !isTiny(camera)
  const place = hullPlaces(camera, !pen.isEdged)
  const drawFaces = (hull: Hull, faces: readonly number[], isWrong: boolean): void => {
    const hatching: number[] = []
    for (const face of faces) {
      const { corners, normal, kind, marks } = hull.faces[face]!
      if (kind === 'cut' || isWrong) hatch(camera, hull, corners, normal, hatching)
      if (marks.length > 0) drawMarks(camera, marks, pen)
    }
    if (hatching.length === 0) return
    const lines = pairedCourses(hatching.length / 4)
    pen.lines(isWrong ? 'wrong' : 'hatching', Float64Array.from(hatching), lines)
  }
  return (hull, isWrong) => {
    const about = knownOf(hull)
    const { faces, creases, outline } = seenOf(about, camera.toward)
    const places = place(about)
    let tones = 0
    for (const face of faces) tones = tones * 5 + toneOf(litOf(lit, about.normals, face))
    if (tones !== about.tones || faces !== about.toned)
      Object.assign(about, { tones, toned: faces, fills: fillsOf(hull, about.normals, faces, lit) })
    for (const [tone, loops] of about.fills) pen.fill(tone, places, loops, about.isFlush)
    if (about.isBusy || isWrong) drawFaces(hull, faces, isWrong)
    if (hasCreases && creases.length > 0) pen.lines('crease', places, creases)
    if (outline.length > 0) pen.lines('outline', places, outline)
  }
}
