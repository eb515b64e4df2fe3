import type { PicturePoint } from '../../shared/paths.ts'
import { between, dot, type Vector } from './vector.ts'

/** Where the machine is seen from: degrees to the right of its front, degrees above it, and the size in per cent. */
export interface View {
  readonly turned: number
  readonly raised: number
  readonly zoom: number
}

/** The directions of a view: to the right and up in the picture, and toward the viewer. */
export interface Directions {
  readonly right: Vector
  readonly up: Vector
  readonly toward: Vector
}

/** A parallel projection. */
export interface Camera extends Directions {
  /** Pixels of the picture a mm, and the pixels of the machine's origin. */
  readonly scale: number
  readonly origin: PicturePoint
  /** How many times as wide as usual lines are: finer where the machine is small. */
  readonly line: number
}

/** The rectangle of the picture that the machine has for itself. */
export interface Room {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** The directions of a view. */
export const directionsOf = ({ turned, raised }: View): Directions => {
  const [a, e] = [(turned * Math.PI) / 180, (raised * Math.PI) / 180]
  const [sa, ca, se, ce] = [Math.sin(a), Math.cos(a), Math.sin(e), Math.cos(e)]
  return {
    right: [ca, sa, 0],
    up: [-sa * se, ca * se, ce],
    toward: [sa * ce, -ca * ce, se],
  }
}

/** The least and the most of these points along a direction; three numbers make a point. */
const rangeAlong = ([right, back, up]: Vector, points: Float64Array): readonly [number, number] => {
  let [least, most] = [Infinity, -Infinity]
  for (let n = 0; n < points.length; n += 3) {
    const place = right * points[n]! + back * points[n + 1]! + up * points[n + 2]!
    if (place < least) least = place
    if (place > most) most = place
  }
  return [least, most]
}

/** Pixels a mm from which on lines have their full width, and how fine they are at least. */
const [fullLines, finest] = [2.2, 0.42]

/** Whether the machine is so small that its creases would lie in one another. */
export const isTiny = ({ scale, line }: Camera): boolean => scale / line < fullLines - 0.01

/** How wide lines are at a scale. */
const lineAt = (scale: number): number => Math.min(1, Math.max(finest, scale / fullLines))

/** The same picture so many times as large. */
export const enlarged = (camera: Camera, times: number): Camera => ({
  ...camera,
  scale: camera.scale * times,
  origin: [camera.origin[0] * times, camera.origin[1] * times],
  line: camera.line * times,
})

/** The camera that shows all of these points, three numbers each, in the room, as large as they fit, times the view's zoom. */
export const cameraOf = (view: View, points: Float64Array, room: Room): Camera => {
  const directions = directionsOf(view)
  const [left, right] = rangeAlong(directions.right, points)
  const [low, high] = rangeAlong(directions.up, points)
  const fit = Math.min(room.width / (right - left), room.height / (high - low))
  const scale = (fit * view.zoom) / 100
  return {
    ...directions,
    scale,
    line: lineAt(scale),
    origin: [
      room.left + room.width / 2 - (scale * (left + right)) / 2,
      room.top + room.height / 2 + (scale * (low + high)) / 2,
    ],
  }
}

/** The camera that shows a point in the middle of a picture of this size, which is so many mm wide. */
export const cameraAt = (
  view: View,
  middle: Vector,
  across: number,
  { width, height }: { readonly width: number; readonly height: number },
): Camera => {
  const directions = directionsOf(view)
  const scale = width / across
  const [x, y] = [dot(directions.right, middle), dot(directions.up, middle)]
  return {
    ...directions,
    scale,
    line: lineAt(scale),
    origin: [width / 2 - scale * x, height / 2 + scale * y],
  }
}

/** Where a point of the machine is in the picture. */
export const project = ({ right, up, scale, origin }: Camera, point: Vector): PicturePoint => [
  origin[0] + scale * dot(right, point),
  origin[1] - scale * dot(up, point),
]

/** Writes where points of the machine are in the picture, each across and then down; three numbers make a point. */
export const projectAll = (
  { right: [rx, ry, rz], up: [ux, uy, uz], scale, origin: [left, top] }: Camera,
  points: Float64Array,
  places: Float64Array,
): void => {
  for (let from = 0, to = 0; from < points.length; from += 3, to += 2) {
    const [x, y, z] = [points[from]!, points[from + 1]!, points[from + 2]!]
    places[to] = left + scale * (rx * x + ry * y + rz * z)
    places[to + 1] = top - scale * (ux * x + uy * y + uz * z)
  }
}

/** A view of the machine as it lies in a room: its camera, and the point of the machine in the middle of the room. */
export interface Standing {
  readonly view: View
  readonly scale: number
  readonly middle: Vector
}

/** Where one stands with a camera that looks at these points from a view. */
export const standingOf = (view: View, camera: Camera, points: Float64Array, room: Room): Standing => {
  const { right, up, toward, scale, origin } = camera
  const [near, far] = rangeAlong(toward, points)
  const [across, high, deep] = [
    (room.left + room.width / 2 - origin[0]) / scale,
    (origin[1] - room.top - room.height / 2) / scale,
    (near + far) / 2,
  ]
  const along = (axis: 0 | 1 | 2): number => right[axis] * across + up[axis] * high + toward[axis] * deep
  return { view, scale, middle: [along(0), along(1), along(2)] }
}

/** The view and the camera a share, 0 to 1, of the way from where one stands to another place. */
export const cameraBetween = (
  from: Standing,
  to: Standing,
  share: number,
  room: Room,
): { readonly view: View; readonly camera: Camera } => {
  const mix = (one: number, other: number): number => one + (other - one) * share
  const view: View = {
    turned: mix(from.view.turned, to.view.turned),
    raised: mix(from.view.raised, to.view.raised),
    zoom: mix(from.view.zoom, to.view.zoom),
  }
  const directions = directionsOf(view)
  const scale = from.scale * (to.scale / from.scale) ** share
  const middle = between(from.middle, to.middle, share)
  return {
    view,
    camera: {
      ...directions,
      scale,
      line: lineAt(scale),
      origin: [
        room.left + room.width / 2 - scale * dot(directions.right, middle),
        room.top + room.height / 2 + scale * dot(directions.up, middle),
      ],
    },
  }
}
