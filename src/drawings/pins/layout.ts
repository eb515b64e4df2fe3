import { dimensions } from '../../mechanism/dimensions.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/** Where things are in the pins' figure, in pixels of its own picture. One scale for lengths and heights. */
export interface PinsLayout extends FigureLayout {
  /** Pixels a millimetre, in every direction. */
  readonly perMm: number
  /** Left edge of the window and how many columns it shows. */
  readonly left: number
  readonly columns: number
  /** Base line of the columns' numbers. */
  readonly numbers: number
  /** The card from above: top and bottom edge of the piece shown. */
  readonly planTop: number
  readonly planBottom: number
  /** Level from which heights count, where the rockers' pivots are. */
  readonly datum: number
  /** Where the rods are broken off. */
  readonly rods: number
}

export const layouts: Layouts<PinsLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 600,
    perMm: 31,
    left: 138,
    columns: 5,
    numbers: 22,
    planTop: 32,
    planBottom: 162,
    datum: 338,
    rods: 566,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 360,
    perMm: 19,
    left: 3,
    columns: 3,
    numbers: 12,
    planTop: 18,
    planBottom: 98,
    datum: 206,
    rods: 333,
  },
}

/** From one column to the next, in pixels: the needles' pitch, which is this drawing's choice. */
export const columnPitch = (layout: PinsLayout): number => dimensions.pitch * layout.perMm

/** Right edge of the window. */
export const rightOf = (layout: PinsLayout): number => layout.left + layout.columns * columnPitch(layout)

/** First column of the window, with a fraction: the column under the sweep is in the middle while it can be. */
export const firstColumn = (layout: PinsLayout, sweepAt: number): number =>
  Math.min(dimensions.columns + 1 - layout.columns, Math.max(1, sweepAt - (layout.columns - 1) / 2))

/** Middle of a column, or of a place between columns, in the picture. */
export const columnX = (layout: PinsLayout, first: number, column: number): number =>
  layout.left + (column - first + 0.5) * columnPitch(layout)

/** A height in mm above the datum, as a level of the picture. */
export const levelY = (layout: PinsLayout, height: number): number => layout.datum - height * layout.perMm

/** Middle of the card's row, from above. */
export const planY = (layout: PinsLayout): number => (layout.planTop + layout.planBottom) / 2
