import { dimensions } from '../../mechanism/dimensions.ts'
import { harmonic } from '../../mechanism/frame.ts'
import type { ButtPosition } from '../shared/detail/profile.ts'
import type { FigureLayout, Layouts, WordsPlace } from '../shared/view.ts'

/** How many times heights are drawn larger than lengths along the bed. */
export const lift = 2

/** Where things are in the hold figure, in pixels of its own picture. `along` is the scale: pixels a mm of the bed. */
export interface HoldLayout extends FigureLayout {
  readonly along: number
  /** The section's left and right edge, the middle of the needle shown, and the rest level. */
  readonly left: number
  readonly right: number
  readonly middle: number
  readonly rest: number
  readonly presserTop: number
  /** Depth in mm of the tricks' floor, and of the section's lower edge. */
  readonly floor: number
  readonly foot: number
  readonly names: number
  /** The three moments: left edges, size and scale of each picture, and where its words begin. */
  readonly stills: {
    readonly lefts: readonly [number, number, number]
    readonly top: number
    readonly width: number
    readonly height: number
    readonly along: number
    readonly middle: number
    readonly rest: number
    readonly words: WordsPlace
  }
}

const wide: HoldLayout = {
  shape: 'wide',
  width: 1000,
  height: 600,
  along: 29,
  left: 118,
  right: 862,
  middle: 490,
  rest: 126,
  presserTop: 56,
  floor: -4.7,
  foot: -4.95,
  names: 432,
  stills: {
    lefts: [8, 341, 674],
    top: 446,
    width: 318,
    height: 148,
    along: 12.5,
    middle: 74,
    rest: 24,
    words: { x: 116, y: 52, step: 20 },
  },
}

const narrow: HoldLayout = {
  shape: 'narrow',
  width: 344,
  height: 360,
  along: 20,
  left: 2,
  right: 282,
  middle: 148,
  rest: 64,
  presserTop: 8,
  floor: -4.7,
  foot: -3.42,
  names: 216,
  stills: {
    lefts: [2, 117, 232],
    top: 239,
    width: 110,
    height: 119,
    along: 7,
    middle: 62,
    rest: 14,
    words: { x: 6, y: 101, step: 15 },
  },
}

export const layouts: Layouts<HoldLayout> = { wide, narrow }

/** Share of the way from needle to needle over which the view stands still on either, so that it can be read. */
const still = 0.3

/** The needle in the middle of the view, with a fraction while the view goes on from one needle to the next. */
export const viewedAt = (x: number, first: number, last: number): number => {
  const clamped = Math.min(last, Math.max(first, x))
  const needle = Math.floor(clamped)
  return needle + harmonic((clamped - needle - still) / (1 - 2 * still))
}

/** Where a point of the bed, in needles, is in the section. */
export const bedX = (layout: HoldLayout, viewed: number, needle: number): number =>
  layout.middle + (needle - viewed) * dimensions.pitch * layout.along

/** Where a needle is in the section, and the scales there. */
export const buttPosition = (layout: HoldLayout, viewed: number, needle: number): ButtPosition => ({
  x: bedX(layout, viewed, needle),
  rest: layout.rest,
  along: layout.along,
  up: layout.along * lift,
})

/** A height in mm above the rest level, in the section. */
export const levelY = (layout: HoldLayout, height: number): number =>
  layout.rest - height * layout.along * lift
