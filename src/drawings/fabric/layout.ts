import type { Bed } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/** Where things are in the figure of row and fabric, in pixels of its own picture. */
export interface FabricLayout extends FigureLayout {
  /** Left edge of the first needle's stitch, how many needles are shown, and how many rows of fabric. */
  readonly left: number
  readonly needles: number
  readonly rows: number
  /** Width and height of one stitch; the width is the needles' pitch. */
  readonly stitch: { readonly width: number; readonly height: number }
  /** Middle of the card's row, and half its height. */
  readonly card: number
  readonly cardHalf: number
  /** The butts' line, with the needles' tails above and their hooks below it. */
  readonly line: number
  readonly tail: number
  readonly hook: number
  /** Top of the fabric as knitted, of the fabric that the card asks for, and the needles' names. */
  readonly knitted: number
  readonly asked: number
  readonly names: number
}

export const layouts: Layouts<FabricLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 600,
    left: 134,
    needles: 48,
    rows: 16,
    stitch: { width: 18, height: 13 },
    card: 22,
    cardHalf: 12,
    line: 67,
    tail: 15,
    hook: 28,
    knitted: 134,
    asked: 380,
    names: 365,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 360,
    left: 3,
    needles: 26,
    rows: 11,
    stitch: { width: 13, height: 10 },
    card: 10,
    cardHalf: 8,
    line: 41,
    tail: 10,
    hook: 19,
    knitted: 87,
    asked: 226,
    names: 351,
  },
}

/** Pixels a millimetre along the bed and in the needles' travel. */
export const perMm = (layout: FabricLayout): number => layout.stitch.width / dimensions.pitch

/** How far the needles' hooks reach when selected. */
export const foremost = (layout: FabricLayout): number =>
  layout.line + layout.hook + cams.selectedTravel * perMm(layout)

/** First needle of the window, with a fraction, with the carriage at `x`: in its middle, but within the needles in use. */
export const windowFrom = (layout: FabricLayout, bed: Bed, x: number): number => {
  const width = layout.needles
  const inUse = bed.last - bed.first + 1
  if (inUse <= width) return (bed.first + bed.last + 1 - width) / 2
  return Math.min(bed.last + 1 - width, Math.max(bed.first, x + 0.5 - width / 2))
}
