import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { needlesLarge, needlesOf, stripShown, underPresser } from '../../words/figures/strip.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { isPushed } from '../shared/detail/needle-state.ts'
import { type Layout, layouts } from './layout.ts'

/** What the strip figure's parts need. */
export interface View {
  readonly run: Run
  readonly frame: Frame
  readonly layout: Layout
  /** The strip shown, 1 to 8, its three columns and its needles from the left. */
  readonly strip: number
  readonly columns: readonly number[]
  readonly needles: readonly number[]
  /** Its needle under the presser; null where none is. */
  readonly under: number | null
  /** The needles drawn large. */
  readonly large: { readonly one: number | null; readonly other: number | null }
  /** How far the strip has shifted, in mm, and whether a rocker pushes it now. */
  readonly shift: number
  readonly pushed: boolean
  /** Ids of the parts with a fault, and whether the strip itself has one. */
  readonly broken: ReadonlySet<string>
  readonly isBroken: boolean
  readonly prefix: string
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): View => {
  const strip = stripShown(run, frame)
  const broken = new Set(run.scenario.faults.map(partOfFault))
  return {
    run,
    frame,
    layout: layouts[options.shape],
    strip,
    columns: [strip, strip + 8, strip + 16],
    needles: needlesOf(strip),
    under: underPresser(frame, strip),
    large: needlesLarge(frame, strip),
    shift: frame.stripShifts[strip - 1] ?? 0,
    pushed: isPushed(frame, strip),
    broken,
    isBroken: broken.has(`strip.${strip}`),
    prefix: options.prefix,
  }
}

/** How the strip and its catches are marked: broken, moving because of a hole, or neither. */
export const stripMark = ({ isBroken, pushed }: View): string =>
  isBroken ? ' broken' : pushed ? ' pushed' : ''
