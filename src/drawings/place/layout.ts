import { dimensions } from '../../mechanism/dimensions.ts'
import type { Strip } from '../../mechanism/indices.ts'
import { type FigureLayout, type Layouts, layoutsByBed } from '../shared/view.ts'
import type { Origin } from './projection.ts'

/**
 * The machine's shape in the picture, in pixels along each axis of the projection. Nobody's machine: only the needles'
 * pitch, and within the reader the columns', are the model's.
 */
export interface PlaceLayout extends Origin, FigureLayout {
  /** From needle to needle, and from column to column. */
  readonly pitch: number
  readonly column: number
  /** Pixels a millimetre for what moves across the bed, up or down, and for the strips. */
  readonly moved: number
  /** The bed's first needle, and how many it has. */
  readonly first: number
  readonly needles: number
  /** How far the body reaches past the last needle at each end, in needles. */
  readonly beyond: number
  /** Depths from the bed's front edge: hooks, butts, tails, the deck's front, the nearest strip, and the back. */
  readonly hook: number
  readonly butt: number
  readonly tail: number
  readonly deck: number
  readonly strip: number
  readonly back: number
  /** From strip to strip. */
  readonly stripPitch: number
  /** How high the bed's body and the deck over the strips are. */
  readonly body: number
  readonly deckHigh: number
  /** Needles between which the deck is cut away. */
  readonly cut: readonly [number, number]
  /**
   * The reader, cut open along the row of front legs: depth of the pins' front and back legs and of its back, heights of
   * its inside and top, and of the plate under it through whose slots the rods go down.
   */
  readonly reader: {
    readonly pins: number
    readonly legs: number
    readonly back: number
    readonly bottom: number
    readonly pivot: number
    readonly top: number
    readonly plate: number
  }
  /** The card: from row to row, how far up it is seen, and the radius of its bend. */
  readonly card: { readonly row: number; readonly high: number; readonly bend: number }
  /** The carriage: front, back and height. */
  readonly carriage: { readonly front: number; readonly back: number; readonly high: number }
  /** First line and spacing of the list of names. */
  readonly list: number
}

export const layouts: Layouts<PlaceLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 560,
    left: 16,
    top: 300,
    pitch: 3.36,
    column: 5.6,
    moved: 3.1,
    first: 0,
    needles: dimensions.needles,
    beyond: 24,
    hook: -8,
    butt: 84,
    tail: 142,
    deck: 150,
    strip: 166,
    back: 348,
    stripPitch: 22,
    body: 26,
    deckHigh: 10,
    cut: [58, 166],
    reader: { pins: 236, legs: 245, back: 338, bottom: 40, pivot: 60, top: 88, plate: 24 },
    card: { row: 5.6, high: 146, bend: 16 },
    carriage: { front: 8, back: 144, high: 25 },
    list: 500,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 350,
    left: 4,
    top: 192,
    pitch: 1.08,
    column: 3.5,
    moved: 2.2,
    first: 0,
    needles: dimensions.needles,
    beyond: 24,
    hook: -5,
    butt: 36,
    tail: 60,
    deck: 64,
    strip: 74,
    back: 190,
    stripPitch: 13.6,
    body: 15,
    deckHigh: 7,
    cut: [46, 178],
    reader: { pins: 120, legs: 125.5, back: 183, bottom: 28, pivot: 40, top: 58, plate: 17 },
    card: { row: 3.5, high: 86, bend: 11 },
    carriage: { front: 4, back: 61, high: 15 },
    list: 310,
  },
}

/** The layout for a bed of any length: its body is as long in the picture, and what is on it keeps its share of it. */
export const layoutOf = layoutsByBed<PlaceLayout>(layouts, (layout, whole) => {
  const needles = whole.last - whole.first + 1
  const share = needles / layout.needles
  const [from, to] = layout.cut
  return {
    ...layout,
    first: whole.first,
    needles,
    beyond: layout.beyond * share,
    pitch: layout.pitch / share,
    cut: [whole.first + share * from, whole.first + share * to],
  }
})

/** How far along the bed a needle is, from the body's left end. */
export const along = (layout: PlaceLayout, index: number): number =>
  (index - layout.first + layout.beyond + 0.5) * layout.pitch

/** Length of the body. */
export const bodyLength = (layout: PlaceLayout): number => (layout.needles + 2 * layout.beyond) * layout.pitch

/** Needle over which the reader has its middle: its columns are those of the needles from R1 on. */
const readerMiddle = dimensions.needles / 2 + (dimensions.columns - 1) / 2

/** How far along the bed column 1 to 24 of the reader is; fractions and places outside count on. */
export const columnAlong = (layout: PlaceLayout, column: number): number =>
  along(layout, readerMiddle) + (column - (dimensions.columns + 1) / 2) * layout.column

/** Ends of the reader along the bed. */
export const readerEnds = (layout: PlaceLayout): readonly [number, number] => [
  columnAlong(layout, -1.2),
  columnAlong(layout, dimensions.columns + 2.2),
]

/** Depth of the middle of strip 1 to 8; strip 1 lies furthest, as in the plan of the whole chain. */
export const stripDepth = (layout: PlaceLayout, strip: Strip): number =>
  layout.strip + (dimensions.strips - strip) * layout.stripPitch

/** Thickness of a strip, and half its depth. */
export const stripHigh = (layout: PlaceLayout): number => layout.deckHigh * 0.35
export const stripHalf = (layout: PlaceLayout): number => layout.stripPitch * 0.24

/** Pixels a millimetre along the bed within the reader. */
export const readerMm = (layout: PlaceLayout): number => layout.column / dimensions.pitch

/** A height in mm above the pins' datum, the reader's top. */
export const levelHigh = (layout: PlaceLayout, mm: number): number => layout.reader.top + mm * layout.moved

/** How high the belt runs: a little above the highest pin. */
export const beltHigh = (layout: PlaceLayout): number => levelHigh(layout, dimensions.pinHigh + 1.6)

/** How many times as large as the bed the reader is drawn, and movements. */
export const readerTimes = (layout: PlaceLayout): number => layout.column / layout.pitch
export const movedTimes = (layout: PlaceLayout): number => (layout.moved * dimensions.pitch) / layout.pitch
