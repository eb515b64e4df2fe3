import { type Bed, modulo, wholeBed, wholeBedOf } from '../../mechanism/bed.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { type Needle, needlesBetween, toNeedle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions, Shape } from './figure-contract.ts'

/** What every layout has: for which shape it is, and the picture's size in its own pixels. */
export interface FigureLayout {
  readonly shape: Shape
  readonly width: number
  readonly height: number
}

/** Where lines of words beside a picture in a figure begin, from its corner, and how far it is from one to the next. */
export interface WordsPlace {
  readonly x: number
  readonly y: number
  readonly step: number
}

/** A picture's layouts, one for each shape. */
export type Layouts<L extends FigureLayout> = Readonly<Record<Shape, L>>

/** What every part of a figure is drawn from: the state, and how it is laid out. */
export interface FigureView<L extends FigureLayout> {
  readonly run: Run
  readonly frame: Frame
  readonly layout: L
  /** Ids of the parts with a fault. */
  readonly broken: ReadonlySet<string>
  /** Makes the ids of patterns and clips unique on a page. */
  readonly prefix: string
  /** The first and the last needle that the machine has, in use or not. */
  readonly whole: Bed
}

/** The part of a figure's view that every figure has. */
export const viewBase = <L extends FigureLayout>(
  layouts: Layouts<L>,
  run: Run,
  frame: Frame,
  { shape, prefix }: FigureOptions,
): FigureView<L> => ({
  run,
  frame,
  layout: layouts[shape],
  broken: new Set(run.scenario.faults.map(partOfFault)),
  prefix,
  whole: wholeBedOf(run.condition.dimensions.needles),
})

/** The needles of a whole bed from the place `first` to `last`, both included, as far as the bed has them. */
export const needlesInSight = (whole: Bed, first: number, last: number): readonly Needle[] =>
  first > whole.last || last < whole.first
    ? []
    : needlesBetween(toNeedle(Math.max(whole.first, first)), toNeedle(Math.min(whole.last, last)))

/**
 * The needles of a whole bed from the place `first` on, one in each of `count` slots: a needle keeps its slot while a window moves, so that
 * only the slots at the window's edges are drawn again. A slot that lies past an end of the bed holds null.
 */
export const needleSlots = (whole: Bed, first: number, count: number): (Needle | null)[] =>
  Array.from({ length: count }, (_, slot) => {
    const place = first + modulo(slot - first, count)
    return place >= whole.first && place <= whole.last ? toNeedle(place) : null
  })

/**
 * Layouts of a picture that shows a whole bed, fitted to beds of other lengths than the training machine's: `fit` gives one
 * for a bed and is asked once for each.
 */
export const layoutsByBed = <L extends FigureLayout>(
  layouts: Layouts<L>,
  fit: (layout: L, whole: Bed) => L,
): ((shape: Shape, whole: Bed) => L) => {
  const known = new Map<string, L>()
  return (shape, whole) => {
    if (whole.first === wholeBed.first) return layouts[shape]
    const key = `${shape} ${whole.first}`
    const found = known.get(key) ?? fit(layouts[shape], whole)
    known.set(key, found)
    return found
  }
}
