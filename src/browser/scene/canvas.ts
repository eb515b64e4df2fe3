import type { Camera } from '../../drawings/scene/engine/camera.ts'
import { type Canvas2D, canvasPen } from '../../drawings/scene/engine/canvas-pen.ts'
import { inkScene, type Marked } from '../../drawings/scene/draw-scene.ts'
import { machineRoom } from '../../drawings/scene/cameras.ts'
import type { Scene } from '../../drawings/scene/scene.ts'
import type { PictureSize } from '../../drawings/scene/engine/visible.ts'
import { createHaste } from './haste.ts'
import { inksAt } from './inks.ts'

/** What is drawn of the machine: what a view shows of it, and what is brought out. */
interface Inked {
  readonly scene: Scene
  readonly marked: Marked
}

/** A canvas over the picture, on which the machine is drawn while it moves. */
export interface MachineCanvas {
  /** Lays the canvas over the machine's place in a picture; its room is that of steps unless it is given. */
  readonly layOver: (place: SVGGraphicsElement, room?: PictureSize) => void
  readonly draw: (inked: Inked, camera: Camera) => void
  /** Draws two as they go over into one another: the share, 0 to 1, is how much there is of the second. */
  readonly blend: (from: Inked, to: Inked, share: number, camera: Camera) => void
}

/** Where a group of a picture is on the screen. */
export const placeOnScreen = (place: SVGGraphicsElement): DOMMatrix => {
  const matrix = place.getScreenCTM()
  if (!matrix) throw new Error('the picture is not on the page')
  return matrix
}

/** The part of a room at a place that is within its picture, in pixels of the room: on a phone the room is wider. */
const partInPicture = (place: SVGGraphicsElement, { width, height }: PictureSize) => {
  const { a, e, f } = placeOnScreen(place)
  const picture = place.ownerSVGElement?.getBoundingClientRect() ?? new DOMRect()
  const [left, top] = [Math.max(0, (picture.left - e) / a), Math.max(0, (picture.top - f) / a)]
  return {
    left,
    top,
    width: Math.min(width, (picture.right - e) / a) - left,
    height: Math.min(height, (picture.bottom - f) / a) - top,
  }
}

/** Makes the canvas; it lies in an element that is placed, and its colours are those of the picture's own styles. */
export const createMachineCanvas = (canvas: HTMLCanvasElement, styled: () => Element): MachineCanvas => {
  const context = canvas.getContext('2d')
  if (!context) throw new Error('this browser draws on no canvas')
  const inksOf = inksAt(styled)
  const haste = createHaste()
  let layers: readonly OffscreenCanvasRenderingContext2D[] = []
  let scale = 1
  /** The part of the machine's room that is in the picture, in pixels of the room. */
  let seen = { left: 0, top: 0, ...machineRoom }
  const prepare = (on: Canvas2D): void => {
    const { left, top, width, height } = seen
    on.setTransform(scale, 0, 0, scale, -left * scale, -top * scale)
    on.clearRect(left, top, width, height)
    on.lineJoin = 'round'
    on.lineCap = 'round'
  }
  const ink = (on: Canvas2D, { scene, marked }: Inked, camera: Camera): void => {
    prepare(on)
    let inks = inksOf('frame')
    const pen = canvasPen(on, camera.line, () => inks, haste.isOn())
    inkScene(scene, camera, pen, marked, (look) => {
      inks = inksOf(look)
    })
  }
  const layersNow = (): readonly OffscreenCanvasRenderingContext2D[] => {
    if (layers.length === 0)
      layers = [0, 1].flatMap(() => new OffscreenCanvas(canvas.width, canvas.height).getContext('2d') ?? [])
    return layers
  }
  return {
    layOver: (place, room = machineRoom) => {
      haste.rest()
      const { a, e, f } = placeOnScreen(place)
      seen = partInPicture(place, room)
      const { left, top, width, height } = seen
      const box = canvas.parentElement?.getBoundingClientRect() ?? new DOMRect()
      const fine = a * Math.min(devicePixelRatio, 2)
      const [wide, high] = [Math.round(width * fine), Math.round(height * fine)]
      if (canvas.width !== wide || canvas.height !== high) {
        Object.assign(canvas, { width: wide, height: high })
        layers = []
      }
      scale = fine
      Object.assign(canvas.style, {
        left: `${e + left * a - box.left}px`,
        top: `${f + top * a - box.top}px`,
        width: `${width * a}px`,
        height: `${height * a}px`,
      })
    },
    draw: (inked, camera) => {
      haste.time(() => {
        ink(context, inked, camera)
      })
    },
    blend: (from, to, share, camera) => {
      const [before, after] = layersNow()
      if (!before || !after) return
      ink(before, from, camera)
      ink(after, to, camera)
      prepare(context)
      context.setTransform(1, 0, 0, 1, 0, 0)
      // What both have alike stays as it is, as the shares add up.
      context.globalAlpha = 1 - share
      context.drawImage(before.canvas, 0, 0)
      context.globalCompositeOperation = 'lighter'
      context.globalAlpha = share
      context.drawImage(after.canvas, 0, 0)
      context.globalCompositeOperation = 'source-over'
      context.globalAlpha = 1
    },
  }
}
