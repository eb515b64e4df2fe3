import { dimensions } from '../../mechanism/dimensions.ts'
import { carriageHalf } from '../shared/cams.ts'
import { type FigureLayout, type Layouts, layoutsByBed } from '../shared/view.ts'

/** Where an end of the reader is drawn, and how large against the pixels that its parts are given in. */
export interface EndPlace {
  readonly x: number
  readonly y: number
  readonly scale: number
}

/** Where things are in the card's figure, in pixels of its own picture. */
export interface CardLayout extends FigureLayout {
  /** From one column to the next, in pixels; one scale for the whole front view. */
  readonly pitch: number
  /** Left edge of column 1. */
  readonly left: number
  /** Middle of the row being read. */
  readonly reading: number
  /** Top of the card as far as it is shown, edge of the case, and its bottom. */
  readonly top: number
  readonly slot: number
  readonly bottom: number
  /** Base line of the card's column numbers; null where they are left out. */
  readonly numbers: number | null
  readonly leftEnd: EndPlace
  readonly rightEnd: EndPlace
  /** Whether the right end shows the card's loop, the pins and the sweep too. */
  readonly hasSection: boolean
  /** Left edge of the bed's plan, its first needle, pixels a needle, its rail, its top and its bottom. */
  readonly bedLeft: number
  readonly first: number
  readonly needle: number
  readonly rail: number
  readonly bedTop: number
  readonly bedBottom: number
}

export const layouts: Layouts<CardLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 600,
    pitch: 20,
    left: 236,
    reading: 328,
    top: 114,
    slot: 228,
    bottom: 364,
    numbers: 104,
    leftEnd: { x: 129, y: 112, scale: 1 },
    rightEnd: { x: 870, y: 262, scale: 1 },
    hasSection: true,
    bedLeft: 40,
    first: 0,
    needle: 3.755,
    rail: 432,
    bedTop: 462,
    bedBottom: 516,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 360,
    pitch: 10.8,
    left: 36,
    reading: 115,
    top: 14,
    slot: 62,
    bottom: 133,
    numbers: null,
    leftEnd: { x: 54, y: 190, scale: 0.8 },
    rightEnd: { x: 290, y: 190, scale: 0.8 },
    hasSection: false,
    bedLeft: 4,
    first: 0,
    needle: 1.371,
    rail: 253,
    bedTop: 267,
    bedBottom: 292,
  },
}

/** The layout for a bed of any length: with the carriage's ways beyond its ends it is as long in the picture. */
export const layoutOf = layoutsByBed(layouts, (layout, { first, last }) => {
  const beyond = 2 * (dimensions.turnMark + carriageHalf)
  const share = (last - first + beyond) / (dimensions.needles - 1 + beyond)
  return { ...layout, first, needle: layout.needle / share }
})

/** From one row of the card to the next, in mm: this drawing's choice, as is the columns' spacing. */
const rowMm = 5

/** Pixels a millimetre in the front view. */
export const perMm = (layout: CardLayout): number => layout.pitch / dimensions.pitch

/** From one row to the next, in pixels. */
export const rowSpacing = (layout: CardLayout): number => rowMm * perMm(layout)

/** Middle of a column of pins, 1 to 24, or of a place between columns. */
export const columnX = (layout: CardLayout, column: number): number =>
  layout.left + (column - 0.5) * layout.pitch

/** Middle of the row that is `ahead` rows ahead of the one being read. */
export const rowY = (layout: CardLayout, ahead: number): number => layout.reading - ahead * rowSpacing(layout)

/** A place of the bed, in needles, in the picture. */
export const bedX = (layout: CardLayout, place: number): number =>
  layout.bedLeft + (place - layout.first + dimensions.turnMark + carriageHalf) * layout.needle

/** The place of the bed at a point of the picture. */
export const bedAt = (layout: CardLayout, x: number): number =>
  (x - layout.bedLeft) / layout.needle + layout.first - dimensions.turnMark - carriageHalf
