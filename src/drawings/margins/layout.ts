import type { FigureLayout, Layouts } from '../shared/view.ts'

/** Where things are in the figure of the margins, in pixels of its own picture. */
export interface MarginsLayout extends FigureLayout {
  /** First margin's middle, and the distance from one to the next. */
  readonly top: number
  readonly pitch: number
  /** The line at which a stage fails, pixels a millimetre, and the ends of the scale in mm. */
  readonly zero: number
  readonly perMm: number
  readonly least: number
  readonly most: number
  /** Half the height of a bar, and how far below its middle the bar of the new machine begins and ends. */
  readonly half: number
  readonly asNew: readonly [number, number]
  /** Right edge of the lengths in figures. */
  readonly lengths: number
  /** The curve's box. */
  readonly curve: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  /** First line of the legend. */
  readonly legend: number
}

export const layouts: Layouts<MarginsLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 560,
    top: 60,
    pitch: 51,
    zero: 352,
    perMm: 172,
    least: -0.75,
    most: 1.62,
    half: 9,
    asNew: [11, 17],
    lengths: 706,
    curve: { x: 776, y: 178, width: 206, height: 150 },
    legend: 400,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 360,
    top: 34,
    pitch: 25,
    zero: 86,
    perMm: 112,
    least: -0.75,
    most: 1.64,
    half: 4,
    asNew: [4, 7.5],
    lengths: 341,
    curve: { x: 214, y: 294, width: 124, height: 46 },
    legend: 0,
  },
}

/** The place of a length in mm on the scale, kept within its ends. */
export const lengthX = (layout: MarginsLayout, mm: number): number =>
  layout.zero + Math.min(layout.most, Math.max(layout.least, mm)) * layout.perMm
