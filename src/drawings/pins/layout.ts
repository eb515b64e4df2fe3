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
  /** Middle of the row of front legs at rest, from above. */
  readonly legs: number
  /** Level from which heights count: the top plate's upper side. */
  readonly datum: number
  /** Where the rods are broken off. */
  readonly rods: number
  /** Where the front leg of one pin stands that is seen from the side; null where there is no room for it. */
  readonly profile: number | null
}

export const layouts: Layouts<PinsLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 600,
    perMm: 25,
    left: 138,
    columns: 5,
    numbers: 22,
    planTop: 32,
    planBottom: 132,
    legs: 190,
    datum: 384,
    rods: 556,
    profile: 872,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 360,
    perMm: 17.5,
    left: 3,
    columns: 3,
    numbers: 12,
    planTop: 17,
    planBottom: 81,
    legs: 117,
    datum: 232,
    rods: 334,
    profile: null,
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
