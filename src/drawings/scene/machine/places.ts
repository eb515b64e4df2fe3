import { dimensions } from '../../../mechanism/dimensions.ts'
import type { Needle, Strip } from '../../../mechanism/indices.ts'

/**
 * Where the drawing puts things, in mm: to the right of the reader's middle, behind the butts, and above the top plate
 * of the reader. What the model knows comes from the model; all else is this drawing's choice.
 */

/** How many times heights are drawn larger: those of the pins, and those of butts, catches and cams. */
export const heightTimes = { reader: 2.5, bed: 2 } as const

/** The middle of a column's pin at rest. */
export const columnAt = (column: number): number => (column - (dimensions.columns + 1) / 2) * dimensions.pitch

/** The middle of a needle: the reader is above R1 to R24. */
export const needleAt = (needle: Needle | number): number => columnAt(needle - dimensions.needles / 2 + 1)

/** The first and the last needle of the stretch of the bed that is drawn: those under the reader. */
export const stretch = {
  first: dimensions.needles / 2,
  last: dimensions.needles / 2 + dimensions.columns - 1,
} as const

/** Where the front legs and the back legs of the pins are at rest. */
export const frontLegs = 20
export const backLegs = 33.75

/** Where from front to back the middle of the row of the card is that is read. */
export const readAt = 33

/** How thick the wire of the pins and of the rods is, halved. */
export const pinRadius = dimensions.pin / 2
export const rodRadius = 0.45

/** The inner sides of the reader's two cheeks, how thick they are, and their upper edge. */
export const cheekAt = 60
export const cheekThick = 3
export const cheekTop = 8

/** Levels of the reader. */
export const levels = {
  topPlate: [-3, 0],
  card: [3, 3.4],
  drawBar: [-17.4, -13.4],
  springRail: [-37.5, -34.5],
  rails: [-49, -43],
  /** Where the rockers touch their pins, where they turn, and where their rods touch the strips' lugs. */
  contact: -17,
  pivot: -46,
  lug: -75,
  rockerTop: -16.5,
  rockerFoot: -55,
  rodBend: -63,
  rodEnd: -76,
  plate: [-70, -68.5],
  belt: [11.1, 12.3],
  wheel: 16.4,
  upperBelt: [20.5, 21.7],
} as const

/** Rockers: how far their middle is from their pin's, half their thickness, and where they are from front to back. */
export const rockers = { aside: -1.25, half: 0.25, front: 15, back: 17.2 } as const

/** The middle of a strip from front to back: strip 8 is the nearest to the needles. */
export const stripAt = (strip: Strip): number => 19 + (dimensions.strips - strip) * 4

/** Half a strip's thickness, its levels, and where its lugs and catches are on it. */
export const strips = { half: 0.8, low: -86, high: -80, lug: 1, riser: -0.5 } as const

/** Level of the tops of the butts at rest. */
const restLevel = -72

/** A height above the butts' rest level in the model's mm, as a level of the drawing. */
export const buttLevel = (height: number): number => restLevel + height * heightTimes.bed

/** Height of a pin's tip, or of what else the model measures from the reader's datum, as a level of the drawing. */
export const tipLevel = (height: number): number => height * heightTimes.reader

/** The ends of the strips in the stretch that is drawn, and the wall of the bed that their return springs press on. */
export const stripEnds = { left: -56.5, right: 58.5, wall: 66 } as const

/** The bed from front to back: its front edge, where the tricks end, the strips' channel, and its back edge. */
export const bed = { front: -46, tricks: 10.4, deck: 10.2, deckBack: 11.9, channel: 13, back: 53 } as const

/** Levels of the bed: its top, the tricks' floor, that of the channel, and its underside. */
export const bedLevels = { top: buttLevel(-2.45), floor: -88, channel: -86.5, under: -94 } as const

/** Half the width of a needle, of its butt and of a trick. */
export const needleHalf = 0.4
export const trickHalf = 0.65

/** The carriage from front to back, its levels, where its runner and its foot are, and the top of its cams. */
export const carriageAt = {
  front: -42,
  back: 11,
  low: -63,
  high: -60,
  runner: [-27, -23],
  foot: [10.2, 11],
  deck: -70.05,
} as const

/** Planes that part what moves: at the bed's edge, before the butts, above the shanks, and behind the tricks. */
export const planes = { edge: -46.2, front: -11, up: -76, back: 11 } as const
