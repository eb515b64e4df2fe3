import { columnsOfStrip, needlesOfStrip } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { type Column, type Needle, measureOfStrip, type Strip } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { needlesLarge, stripShown, underPresser } from '../../words/figures/strip.ts'
import { isPushed } from '../shared/detail/needle-state.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { layoutOf, layouts, type StripLayout } from './layout.ts'

/** What the strip figure's parts need. */
export interface StripView extends FigureView<StripLayout> {
  /** The strip shown, 1 to 8, its three columns and its needles from the left. */
  readonly strip: Strip
  readonly columns: readonly Column[]
  readonly needles: readonly Needle[]
  /** Its needle under the presser; null where none is. */
  readonly under: number | null
  /** The needles drawn large. */
  readonly large: { readonly one: Needle | null; readonly other: Needle | null }
  /** How far the strip has shifted, in mm, and whether a rocker pushes it now. */
  readonly shift: number
  readonly pushed: boolean
  /** Whether the strip itself has a fault. */
  readonly isBroken: boolean
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): StripView => {
  const strip = stripShown(run, frame)
  const base = viewBase(layouts, run, frame, options)
  return {
    ...base,
    layout: layoutOf(options.shape, base.whole),
    strip,
    columns: columnsOfStrip(strip),
    needles: needlesOfStrip(strip, frame.condition, frame.condition.dimensions.needles),
    under: underPresser(frame, strip),
    large: needlesLarge(frame, strip),
    shift: measureOfStrip(frame.stripShifts, strip),
    pushed: isPushed(frame, strip),
    isBroken: base.broken.has(`strip.${strip}`),
  }
}

/** How the strip and its catches are marked: broken, moving because of a hole, or neither. */
export const stripMark = ({ isBroken, pushed }: StripView): string =>
  isBroken ? ' broken' : pushed ? ' pushed' : ''
