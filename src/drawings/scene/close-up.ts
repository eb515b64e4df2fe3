import type { Camera, View } from './engine/camera.ts'
import { directionsOf } from './engine/camera.ts'
import { reachIn } from './engine/extent.ts'
import type { Posed } from './engine/order.ts'
import type { Shape } from './engine/piece.ts'
import { dot, type Vector } from './engine/vector.ts'
import type { Scene } from './scene.ts'

/** A small picture of a place on the machine: its sides in pixels, and how many mm of the machine it is wide. */
export interface Window {
  readonly width: number
  readonly height: number
  readonly wide: number
}

/** The camera that has a point of the machine in the middle of a window. */
export const cameraAt = (view: View, middle: Vector, { width, height, wide }: Window): Camera => {
  const directions = directionsOf(view)
  const scale = width / wide
  return {
    ...directions,
    scale,
    origin: [
      width / 2 - scale * dot(directions.right, middle),
      height / 2 + scale * dot(directions.up, middle),
    ],
  }
}

/** Whether a shape is seen in the window of a camera. */
const isInWindow = (
  { right, up, scale, origin }: Camera,
  { width, height }: Window,
  shape: Shape,
): boolean => {
  const [left, most] = reachIn(shape, right).map((reach) => origin[0] + scale * reach) as [number, number]
  const [low, high] = reachIn(shape, up).map((reach) => origin[1] - scale * reach) as [number, number]
  return most > 0 && left < width && low > 0 && high < height
}

const keep = (posed: Posed, isKept: (shape: Shape) => boolean): Posed => {
  if (posed.kind === 'plane')
    return { ...posed, before: keep(posed.before, isKept), beyond: keep(posed.beyond, isKept) }
  const { drawn, pairs } = posed
  const kept = drawn.map(({ shape }) => isKept(shape))
  const left: Vector[] = []
  let pair = 0
  for (let one = 0; one < drawn.length; one++)
    for (let other = one + 1; other < drawn.length; other++, pair++)
      if (kept[one] && kept[other]) left.push(pairs[pair]!)
  return { kind: 'leaf', drawn: drawn.filter((_, n) => kept[n]), pairs: left }
}

/** A scene with only what is seen in the window of a camera: what is outside it makes a picture no larger. */
export const sceneWithin = (scene: Scene, camera: Camera, window: Window): Scene => ({
  ...scene,
  posed: keep(scene.posed, (shape) => isInWindow(camera, window, shape)),
})
