import type { Camera } from './engine/camera.ts'
import { reachIn } from './engine/extent.ts'
import type { Posed } from './engine/order.ts'
import type { Shape } from './engine/piece.ts'
import type { Vector } from './engine/vector.ts'
import type { Scene } from './scene.ts'

/** The sides of a picture, in pixels. */
interface Size {
  readonly width: number
  readonly height: number
}

/** Whether a shape is seen in a camera's picture. */
const isInPicture = (
  { right, up, scale, origin }: Camera,
  { width, height }: Size,
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

/** A scene with only what is seen in a camera's picture: what is outside it makes a picture no larger. */
export const sceneWithin = (scene: Scene, camera: Camera, size: Size): Scene => ({
  ...scene,
  posed: keep(scene.posed, (shape) => isInPicture(camera, size, shape)),
})
