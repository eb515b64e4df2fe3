import { type Bed, passEnds, type Way } from '../../mechanism/bed.ts'
import type { Strip } from '../../mechanism/indices.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/** Where things are in the timing chart, in pixels of its own picture. */
export interface TimingLayout extends FigureLayout {
  /** Left needle of the window; pixels a needle; how many needles the window shows. */
  readonly left: number
  readonly pitch: number
  readonly needles: number
  /** Base line of the column numbers; middle of the card's row; radius of its holes. */
  readonly numbers: number
  readonly card: number
  readonly hole: number
  /** Base line of the pins' pushes, and pixels a millimetre there; null where the lane is left out. */
  readonly pushes: { readonly base: number; readonly perMm: number } | null
  /** Base line of strip 1, from one strip to the next, and pixels a millimetre of shift. */
  readonly strips: number
  readonly lane: number
  readonly perMm: number
  /** Base line of the needles, and how far a selected one stands up from it. */
  readonly bed: number
  readonly tall: number
  readonly needleNames: number
  /** Top and height of the carriage's cams; null where they are left out. */
  readonly cams: { readonly top: number; readonly height: number } | null
  /** The words at the cursor. */
  readonly cursor: number
}

export const layouts: Layouts<TimingLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 600,
    left: 158,
    pitch: 20,
    needles: 38,
    numbers: 44,
    card: 60,
    hole: 6,
    pushes: { base: 114, perMm: 14 },
    strips: 161,
    lane: 38.5,
    perMm: 14,
    bed: 484,
    tall: 26,
    needleNames: 500,
    cams: { top: 511, height: 15 },
    cursor: 589,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 360,
    left: 28,
    pitch: 12.8,
    needles: 25,
    numbers: 13,
    card: 26,
    hole: 4.2,
    pushes: null,
    strips: 62,
    lane: 27.6,
    perMm: 10,
    bed: 303,
    tall: 24,
    needleNames: 319,
    cams: null,
    cursor: 346,
  },
}

/** How much of the window lies behind the carriage, and how far the chart goes past a turn mark, in needles. */
const behind = 0.62
const margin = 2

/**
 * First needle of the window, with a fraction, that follows a carriage at `x`; at the ends of the pass it stands
 * still. A chart wider than the whole pass is in its middle.
 */
export const windowFrom = (layout: TimingLayout, x: number, way: Way, bed: Bed): number => {
  const { start, end } = passEnds(1, bed)
  const last = layout.needles - 1
  const least = start - margin
  const most = end + margin - last
  if (most < least) return (least + most) / 2
  const share = way === 1 ? behind : 1 - behind
  return Math.min(most, Math.max(least, x - share * last))
}

/** Base line of strip 1 to 8. */
export const stripBase = (layout: TimingLayout, strip: Strip): number =>
  layout.strips + (strip - 1) * layout.lane

/** A place of the bed, in needles, in the group that moves with the window. */
export const placeX = (layout: TimingLayout, place: number): number => place * layout.pitch

/** A place of the bed, in needles, in the picture. */
export const windowX = (layout: TimingLayout, from: number, place: number): number =>
  layout.left + (place - from) * layout.pitch
