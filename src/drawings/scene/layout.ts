import type { Shape } from '../shared/figure-contract.ts'
import type { Margins } from './engine/labels.ts'
import { machineRoom } from './scene.ts'

/** Where things are in a picture of the machine, in pixels of its own. */
export interface SceneLayout {
  readonly shape: Shape
  readonly width: number
  readonly height: number
  /** Where the machine's room is, and how much smaller. */
  readonly machine: { readonly x: number; readonly y: number; readonly scale: number }
  readonly margins: Margins
  /** Radius of a number's ring. */
  readonly ring: number
}

const narrowScale = 0.415

/** The layouts of both shapes: names in the margins where there is room, and their numbers alone on a phone. */
export const sceneLayouts: Readonly<Record<Shape, SceneLayout>> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 620,
    machine: { x: (1000 - machineRoom.width) / 2, y: 10, scale: 1 },
    margins: { left: 146, right: 854, top: 26, bottom: 594, step: 38 },
    ring: 13.5,
  },
  narrow: {
    shape: 'narrow',
    width: 360,
    height: 290,
    machine: {
      x: (360 - machineRoom.width * narrowScale) / 2,
      y: (290 - machineRoom.height * narrowScale) / 2,
      scale: narrowScale,
    },
    margins: { left: 13, right: 347, top: 14, bottom: 276, step: 27 },
    ring: 11,
  },
}

/** The size of the picture of a fault without its labels, in pixels of its own. */
export const faultRoom = { width: 680, height: 420 } as const

const narrowFault = 0.455

/** The layouts of the picture of a fault. */
export const faultLayouts: Readonly<Record<Shape, SceneLayout>> = {
  wide: {
    ...sceneLayouts.wide,
    height: faultRoom.height,
    machine: { x: (1000 - faultRoom.width) / 2, y: 0, scale: 1 },
    margins: { ...sceneLayouts.wide.margins, left: 142, right: 858, bottom: faultRoom.height - 26 },
  },
  narrow: {
    ...sceneLayouts.narrow,
    height: faultRoom.height * narrowFault,
    machine: { x: (360 - faultRoom.width * narrowFault) / 2, y: 0, scale: narrowFault },
    margins: { ...sceneLayouts.narrow.margins, bottom: faultRoom.height * narrowFault - 14 },
  },
}
