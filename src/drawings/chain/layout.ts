import { type Way, wholeBed } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Strip } from '../../mechanism/indices.ts'
import { carriageHalf } from '../shared/cams.ts'
import type { Box } from '../shared/definitions.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/**
 * Where things are in the whole-chain figure, in pixels of its own picture. One scale for the figure: `pitch` is
 * both the needles' and the columns' spacing, so a millimetre is the same everywhere, but heights are `lift` times
 * as large. Wide for desks, narrow for phones.
 */
export interface ChainLayout extends FigureLayout {
  readonly pitch: number
  readonly lift: number
  /** Left edge of the bed's window, and how many needles it shows. */
  readonly left: number
  readonly needles: number
  /** Left edge of the card: column 1 is half a pitch further right. */
  readonly reader: number
  readonly cardRows: number
  readonly rowSpacing: number
  /** Base line of the column numbers; top of the card; the row being read. */
  readonly numbers: number
  readonly cardTop: number
  readonly cardRow: number
  /** Level from which pins' heights count; the rockers' middles and lower ends; the plate that guides their rods. */
  readonly pinDatum: number
  readonly pivot: number
  readonly foot: number
  readonly plate: number
  readonly strips: number
  readonly stripSpacing: number
  /** Rest level of the butts from the side; top and bottom of that band. */
  readonly rest: number
  readonly buttTop: number
  readonly buttBottom: number
  /** The butts' line from above; tails and hooks. */
  readonly line: number
  readonly tail: number
  readonly hook: number
  readonly needleNames: number
  readonly map: number
}

const wide: ChainLayout = {
  shape: 'wide',
  width: 1080,
  height: 656,
  pitch: 19,
  lift: 4,
  left: 148,
  needles: 45,
  reader: 148 + 8 * 19,
  cardRows: 3,
  rowSpacing: 14,
  numbers: 12.5,
  cardTop: 17,
  cardRow: 54,
  pinDatum: 140,
  pivot: 157,
  foot: 173,
  plate: 189,
  strips: 217,
  stripSpacing: 16.5,
  rest: 388,
  buttTop: 364,
  buttBottom: 430,
  line: 482,
  tail: 463,
  hook: 547,
  needleNames: 606,
  map: 625,
}

const narrow: ChainLayout = {
  shape: 'narrow',
  width: 344,
  height: 364,
  pitch: 11.9,
  lift: 4,
  left: 47,
  needles: 24,
  reader: 47,
  cardRows: 1,
  rowSpacing: 12,
  numbers: 0,
  cardTop: 2,
  cardRow: 10,
  pinDatum: 65,
  pivot: 76,
  foot: 86,
  plate: 95,
  strips: 110,
  stripSpacing: 10.2,
  rest: 211,
  buttTop: 194,
  buttBottom: 241,
  line: 261,
  tail: 249,
  hook: 294,
  needleNames: 337,
  map: 344,
}

export const layouts: Layouts<ChainLayout> = { wide, narrow }

/** Pixels a millimetre, along the bed and in the plan. */
export const perMm = (layout: ChainLayout): number => layout.pitch / dimensions.pitch

/** Pixels a millimetre of height. */
export const liftMm = (layout: ChainLayout): number => perMm(layout) * layout.lift

/** Middle of column 1 to 24. */
export const columnX = (layout: ChainLayout, column: number): number =>
  layout.reader + (column - 0.5) * layout.pitch

/** Middle height of strip 1 to 8. */
export const stripY = (layout: ChainLayout, strip: Strip): number =>
  layout.strips + (strip - 1) * layout.stripSpacing

/** Middle of needle `index` with the window beginning at needle `from`. */
export const needleX = (layout: ChainLayout, from: number, index: number): number =>
  layout.left + (index - from) * layout.pitch

/** Middle of needle `index` within a group that slides with the bed. */
export const bedX = (layout: ChainLayout, index: number): number => needleX(layout, 0, index)

/** How much of the window lies behind the carriage. */
const behind = 0.66

/**
 * First needle of the window, with a fraction, that follows a carriage at `x`: more of what it has sorted is shown
 * than of what lies ahead, and at the ends of the whole bed the window stays with it.
 */
export const windowFrom = (layout: ChainLayout, x: number, way: Way, { first, last } = wholeBed): number => {
  const share = way === 1 ? behind : 1 - behind
  const most = last + dimensions.turnMark + carriageHalf + 0.5 - layout.needles
  const least = first - dimensions.turnMark - carriageHalf - 0.5
  return Math.min(most, Math.max(least, x - share * layout.needles))
}

/** The window on the bed, in the picture's pixels. */
export const windowOf = (layout: ChainLayout): Box => ({
  x: layout.left - layout.pitch * 0.4,
  y: 0,
  width: layout.needles * layout.pitch,
  height: layout.height,
})
