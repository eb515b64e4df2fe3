import { modulo } from '../../mechanism/bed.ts'
import { cams, dimensions } from '../../mechanism/dimensions.ts'
import type { Shape } from '../shared/figure-contract.ts'
import type { FigureLayout, Layouts } from '../shared/view.ts'

/**
 * Where things are in the picture of the bed, in pixels of its own picture. The bed is cut into lines, the middle one
 * centred on the middle of the bed. A line holds a multiple of 24 needles, so that every eighth and every 24th needle
 * are one below another.
 */
export interface BedLayout extends FigureLayout {
  /** Spacing of the needles, which is also the scale of what moves: `pitch` pixels are the bed's pitch in mm. */
  readonly pitch: number
  readonly perLine: number
  /** How many lines are before the middle one. */
  readonly before: number
  /** Where the first needle of a line is. */
  readonly left: number
  /** Where the butts of the top line rest, as a hook's place, and from line to line. */
  readonly top: number
  readonly spacing: number
  /** Length of a needle from tail to hook, and half the width of its hook. */
  readonly stem: number
  readonly bend: number
  /** Half the size of the signs that mark a needle which is not as asked. */
  readonly sign: number
  /** Base line of the needles' names, below their line. */
  readonly names: number
  readonly letter: number
  readonly legend: number
}

export const layouts: Layouts<BedLayout> = {
  wide: {
    shape: 'wide',
    width: 1000,
    height: 302,
    pitch: 13.4,
    perLine: 72,
    before: 1,
    left: 24.3,
    top: 40,
    spacing: 90,
    stem: 26,
    bend: 2,
    sign: 4,
    names: 39,
    letter: 6.6,
    legend: 292,
  },
  narrow: {
    shape: 'narrow',
    width: 344,
    height: 338,
    pitch: 6.9,
    perLine: 48,
    before: 2,
    left: 9.9,
    top: 22,
    spacing: 57,
    stem: 14,
    bend: 1,
    sign: 2.5,
    names: 28,
    letter: 6.2,
    legend: 312,
  },
}

/** Pixels for a millimetre of the bed. */
const perMm = ({ pitch }: BedLayout): number => pitch / dimensions.pitch

/** How far a hook is in front of the rest line, in pixels, once the needle is sorted; the front is below. */
export const travels = (layout: BedLayout): { selected: number; plain: number; unmoved: number } => ({
  selected: cams.selectedTravel * perMm(layout),
  plain: -cams.plainTravel * perMm(layout),
  unmoved: 0,
})

/** The bed's front edge and back, from the rest line: hooks of plain needles stay behind the edge. */
export const edges = (layout: BedLayout): { front: number; back: number } => ({
  front: perMm(layout) * 1.5,
  back: travels(layout).plain - layout.stem - 3,
})

const middle = dimensions.needles / 2

/** How many lines there are before the middle one, for a bed of so many needles. */
const linesBefore = ({ perLine }: BedLayout, needles: number): number =>
  Math.max(0, Math.ceil((needles - perLine) / 2 / perLine))

/** The layout for a bed of so many needles: with more lines or fewer. */
export const layoutOf = (shape: Shape, needles: number): BedLayout => {
  const layout = layouts[shape]
  const usual = linesBefore(layout, dimensions.needles)
  const before = linesBefore(layout, needles)
  const more = 2 * (before - usual) * layout.spacing
  return more === 0
    ? layout
    : { ...layout, before, height: layout.height + more, legend: layout.legend + more }
}

/** From a needle to the middle between its hook and its right-hand neighbour, in pixels. */
export const halfway = ({ pitch, bend }: BedLayout): number => pitch / 2 + bend

/** The needle that is first in the middle line. */
const middleFirst = ({ perLine }: BedLayout): number => middle - perLine / 2

/** Which line needle `index` is in, from 0. */
export const lineOf = (layout: BedLayout, index: number): number =>
  Math.floor((index - middleFirst(layout)) / layout.perLine) + layout.before

/** Where needle `index` is, and the rest line of its line. */
export const needlePosition = (layout: BedLayout, index: number): { x: number; y: number } => ({
  x: layout.left + modulo(index - middleFirst(layout), layout.perLine) * layout.pitch,
  y: layout.top + lineOf(layout, index) * layout.spacing,
})

/** The lines that needles from `first` to `last` fill, each as its first and last needle. */
export const linesOf = (
  layout: BedLayout,
  first: number,
  last: number,
): { first: number; last: number }[] => {
  const lines: { first: number; last: number }[] = []
  for (let from = first; from <= last;) {
    const slot = modulo(from - middleFirst(layout), layout.perLine)
    const to = Math.min(last, from + layout.perLine - 1 - slot)
    lines.push({ first: from, last: to })
    from = to + 1
  }
  return lines
}
