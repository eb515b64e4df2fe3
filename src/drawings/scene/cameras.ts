import type { PicturePoint } from '../shared/paths.ts'
import {
  type Camera,
  cameraBetween,
  cameraOf,
  type Room,
  type Standing,
  standingOf,
  type View,
} from './engine/camera.ts'
import type { PictureSize } from './engine/visible.ts'
import type { Scene } from './scene.ts'
import type { PictureFormat } from './views.ts'

/** The room of the machine in pictures of either format, in pixels of its own: that of labels beside it is part of it. */
export const machineRooms: Readonly<Record<PictureFormat, PictureSize>> = {
  tall: { width: 1000, height: 600 },
  flat: { width: 960, height: 340 },
}

/** The room of the machine in the pictures of steps. */
export const machineRoom = machineRooms.tall

/** How far from the edges of its room the machine is at rest, in pixels: to the sides, and above and below. */
const edges: Readonly<Record<PictureFormat, readonly [number, number]>> = { tall: [174, 10], flat: [12, 8] }

const roomIn = (format: PictureFormat): Room => {
  const { width, height } = machineRooms[format]
  const [left, top] = edges[format]
  return { left, top, width: width - 2 * left, height: height - 2 * top }
}

/** Whether a point is clear of the labels beside the machine, in pixels of its room. */
export const isBetweenLabels = (format: PictureFormat, [x, y]: PicturePoint): boolean => {
  const { left, top, width, height } = roomIn(format)
  return x >= left && x <= left + width && y >= top && y <= top + height
}

/** The camera for a scene. */
export const cameraFor = ({ points, format }: Scene, view: View): Camera =>
  cameraOf(view, points, roomIn(format))

/** Where one stands to see a scene with a camera. */
export const standingFor = ({ points, format }: Scene, view: View, camera: Camera): Standing =>
  standingOf(view, camera, points, roomIn(format))

/** The view and the camera a share, 0 to 1, of the way between two places to stand. */
export const onTheWay = (
  from: Standing,
  to: Standing,
  share: number,
): { readonly view: View; readonly camera: Camera } => cameraBetween(from, to, share, roomIn('tall'))
