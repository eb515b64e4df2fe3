import type { Shape } from '../shared/figure-contract.ts'
import type { Margins } from './engine/labels.ts'
import { machineRooms } from './cameras.ts'
import type { PictureFormat } from './views.ts'

/** Where things are in a picture of the machine, in pixels of its own. */
export interface SceneLayout {
  readonly shape: Shape
  readonly format: PictureFormat
  readonly width: number
  readonly height: number
  /** Where the machine's room is, and how much smaller. */
  readonly machine: { readonly x: number; readonly y: number; readonly scale: number }
  readonly margins: Margins
  /** Radius of a number's ring. */
  readonly ring: number
}

const narrowScale = { tall: 0.415, flat: 0.365 } as const
const [tall, flat] = [machineRooms.tall, machineRooms.flat]

/**
 * The layouts of both formats in both shapes: names beside the machine, or above and below it, where there is room, and
 * their numbers alone on a phone.
 */
export const sceneLayouts: Readonly<Record<PictureFormat, Readonly<Record<Shape, SceneLayout>>>> = {
  tall: {
    wide: {
      shape: 'wide',
      format: 'tall',
      width: 1000,
      height: 620,
      machine: { x: (1000 - tall.width) / 2, y: 10, scale: 1 },
      margins: { left: 146, right: 854, top: 26, bottom: 594, step: 38 },
      ring: 13.5,
    },
    narrow: {
      shape: 'narrow',
      format: 'tall',
      width: 360,
      height: 290,
      machine: {
        x: (360 - tall.width * narrowScale.tall) / 2,
        y: (290 - tall.height * narrowScale.tall) / 2,
        scale: narrowScale.tall,
      },
      margins: { left: 13, right: 347, top: 14, bottom: 276, step: 27 },
      ring: 11,
    },
  },
  flat: {
    wide: {
      shape: 'wide',
      format: 'flat',
      width: 1000,
      height: flat.height + 124,
      machine: { x: (1000 - flat.width) / 2, y: 62, scale: 1 },
      margins: { left: 60, right: 940, top: 42, bottom: flat.height + 82, step: 112 },
      ring: 13.5,
    },
    narrow: {
      shape: 'narrow',
      format: 'flat',
      width: 360,
      height: flat.height * narrowScale.flat + 60,
      machine: { x: (360 - flat.width * narrowScale.flat) / 2, y: 30, scale: narrowScale.flat },
      margins: { left: 14, right: 346, top: 13, bottom: flat.height * narrowScale.flat + 47, step: 27 },
      ring: 11,
    },
  },
}

/** The size of the picture of a fault without its labels, in pixels of its own. */
export const faultRoom = { width: 680, height: 420 } as const

const narrowFault = 0.455

/** The layouts of the picture of a fault. */
export const faultLayouts: Readonly<Record<Shape, SceneLayout>> = {
  wide: {
    ...sceneLayouts.tall.wide,
    height: faultRoom.height,
    machine: { x: (1000 - faultRoom.width) / 2, y: 0, scale: 1 },
    margins: { ...sceneLayouts.tall.wide.margins, left: 142, right: 858, bottom: faultRoom.height - 26 },
  },
  narrow: {
    ...sceneLayouts.tall.narrow,
    height: faultRoom.height * narrowFault,
    machine: { x: (360 - faultRoom.width * narrowFault) / 2, y: 0, scale: narrowFault },
    margins: { ...sceneLayouts.tall.narrow.margins, bottom: faultRoom.height * narrowFault - 14 },
  },
}
