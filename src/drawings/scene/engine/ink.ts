import { type Camera, projectAll } from './camera.ts'
import { coilPoints } from './coil.ts'
import { hatchStep, hullInk } from './hull-ink.ts'
import { pairedCourses } from './course.ts'
import type { Pen, Places } from './pen.ts'
import { type Coil, flat, type Shape, type Wire } from './piece.ts'

/** How many places there is room for at first. */
const room = 512

/** Draws shapes one after the other; what is wrong is hatched. */
export type Ink = (shape: Shape, isWrong: boolean) => void

const [neither, second, first, both] = [
  [false, false],
  [false, true],
  [true, false],
  [true, true],
] as const

/** Which ends of a wire have no outline of their own: they go on in a piece that is drawn already, as their place is known. */
const openEnds = ({ joined }: Wire, places: Places, joints: Set<number>): readonly [boolean, boolean] => {
  const isKnown = (end: 0 | 1): boolean => {
    if (!joined[end]) return false
    const key = Math.round(places[2 * end]! * 5) * 2 ** 20 + Math.round(places[2 * end + 1]! * 5)
    const known = joints.size
    joints.add(key)
    return joints.size === known
  }
  const from = isKnown(0)
  return isKnown(1) ? (from ? both : second) : from ? first : neither
}

/** Short lines across a wire, as a hatching: two places each. */
const hatchWire = (places: Places, radius: number, step: number): Places => {
  const [x1, y1, x2, y2] = [places[0]!, places[1]!, places[2]!, places[3]!]
  const length = Math.hypot(x2 - x1, y2 - y1)
  const count = length < step ? 0 : Math.floor(length / step)
  const [right, down] = [(x2 - x1) / length, (y2 - y1) / length]
  const lines = new Float64Array(4 * count)
  for (let n = 0; n < count; n++) {
    const [x, y] = [x1 + right * (n + 0.5) * step, y1 + down * (n + 0.5) * step]
    // On the slant, so that they are not taken for the turns of a spring.
    const [across, on] = [(right - down) * radius, (right + down) * radius]
    lines.set([x - across, y - on, x + across, y + on], 4 * n)
  }
  return lines
}

/** The ends of each wire and the points of each coil, three numbers each: they never change. */
const known = new WeakMap<Wire | Coil, Float64Array>()

const pointsOf = (shape: Wire | Coil): Float64Array => {
  const found = known.get(shape) ?? (shape.kind === 'wire' ? flat(shape.ends) : coilPoints(shape))
  known.set(shape, found)
  return found
}

/** Ink for one drawing: it draws shapes as a camera sees them, with a pen. */
export const inkFor = (camera: Camera, pen: Pen): Ink => {
  const drawHull = hullInk(camera, pen)
  const joints = new Set<number>()
  let places = new Float64Array(room)
  const placed = (points: Float64Array): Places => {
    if (places.length < points.length) places = new Float64Array(points.length)
    projectAll(camera, points, places)
    return places
  }
  return (shape, isWrong) => {
    switch (shape.kind) {
      case 'hull':
        drawHull(shape, isWrong)
        break
      case 'wire': {
        const ends = placed(pointsOf(shape))
        const radius = shape.radius * camera.scale
        pen.wire(ends, radius, openEnds(shape, ends, joints))
        if (!isWrong) break
        const lines = hatchWire(ends, radius, hatchStep * camera.line)
        if (lines.length > 0) pen.lines('wrong', lines, pairedCourses(lines.length / 4))
        break
      }
      case 'coil': {
        const points = pointsOf(shape)
        pen.spring(placed(points), points.length / 3)
        break
      }
    }
  }
}
