import type { Way } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Needle, toNeedle } from '../../mechanism/indices.ts'
import { carriageHalf } from '../shared/cams.ts'
import type { Shape } from '../shared/figure-contract.ts'
import type { NeedlePlan } from '../shared/needle-plan.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/** Where things are in the picture of a fault and its mending, in pixels of its own picture. */
export interface MendLayout extends FigureLayout, NeedlePlan {
  /** Needles' spacing: one scale for the picture, from above. */
  readonly pitch: number
  /** Middle of the first needle, which needle that is, and how many are shown. */
  readonly left: number
  readonly first: Needle
  readonly needles: number
  /** The needle that the line in the fabric leads to. */
  readonly subject: Needle
  /** Middle of strip 1, and how far it is from strip to strip. */
  readonly strips: number
  readonly stripSpacing: number
  /** Base line of the needles' names. */
  readonly names: number
  /** Top of the fabric, how many rows of it are shown, and how high each is. */
  readonly fabric: number
  readonly rows: number
  readonly rowHeight: number
}

/** Needle R1: column 1 of the card reads for it. */
const r1 = dimensions.needles / 2

export const layouts: Layouts<MendLayout> = {
  wide: {
    shape: 'wide',
    width: 900,
    height: 632,
    pitch: 22,
    left: 118,
    first: toNeedle(r1 - 8),
    needles: 32,
    subject: toNeedle(r1 + 10),
    strips: 14,
    stripSpacing: 15,
    line: 168,
    tail: 150,
    hook: 226,
    names: 282,
    fabric: 294,
    rows: 22,
    rowHeight: 15,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 404,
    pitch: 16.4,
    left: 16,
    first: toNeedle(r1),
    needles: 17,
    subject: toNeedle(r1 + 10),
    strips: 8,
    stripSpacing: 10,
    line: 113,
    tail: 101,
    hook: 150,
    names: 193,
    fabric: 201,
    rows: 18,
    rowHeight: 10.9,
  },
}

/** Pixels a millimetre, along the bed and across it. */
export const perMm = (layout: MendLayout): number => layout.pitch / dimensions.pitch

/** Middle of a needle, or of a place between two. */
export const needleX = (layout: MendLayout, index: number): number =>
  layout.left + (index - layout.first) * layout.pitch

/** The last needle shown. */
export const lastNeedle = (layout: MendLayout): Needle => toNeedle(layout.first + layout.needles - 1)

/** Where the strips, the needles and the fabric begin and end in the picture. */
export const edges = (layout: MendLayout): { readonly left: number; readonly right: number } => ({
  left: layout.left - layout.pitch / 2,
  right: layout.left + (layout.needles - 0.5) * layout.pitch,
})

/** Lower edge of the fabric. */
export const foot = (layout: MendLayout): number => layout.fabric + layout.rows * layout.rowHeight

/** How far the middle of the carriage is behind the presser's trailing edge, in needles. */
export const carriageMiddle = 2

/** Where the carriage comes into the picture in a pass of this way, and where it has left it. */
export const reachOf = (shape: Shape, way: Way): { readonly start: number; readonly end: number } => {
  const { first, needles } = layouts[shape]
  const clear = carriageHalf + carriageMiddle + 2
  const [before, after] = [first - clear, first + needles - 1 + clear]
  return way === 1 ? { start: before, end: after } : { start: after, end: before }
}

/** The newest rows of fabric that the words are about: those that both shapes show. */
export const shownRows = Math.min(layouts.wide.rows, layouts.narrow.rows)
