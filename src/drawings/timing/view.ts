import { passEnds } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type Curve, curveOf, soundMachine } from './compare.ts'
import type { Machine, Range } from './curves.ts'
import { type Layout, layouts, windowFrom } from './layout.ts'

/** What the chart's lanes need. */
export interface View {
  readonly run: Run
  readonly frame: Frame
  readonly layout: Layout
  /** First needle of the window, with a fraction. */
  readonly from: number
  /** The part of this pass that the window shows, in needles. */
  readonly range: Range
  readonly machine: Machine
  /** The sound machine in the same pass; null where this one is sound. */
  readonly sound: Machine | null
  readonly curves: readonly Curve[]
  /** Ids of the parts with a fault. */
  readonly broken: ReadonlySet<string>
  readonly prefix: string
}

/** Strip numbers 1 to 8. */
export const stripNumbers = Array.from({ length: dimensions.strips }, (_, n) => n + 1)

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): View => {
  const layout = layouts[options.shape]
  const { condition, pass } = frame
  const from = options.from ?? windowFrom(layout, frame.x, pass.way, condition.bed)
  const { start, end } = passEnds(pass.pass, condition.bed)
  const range = {
    low: Math.max(Math.floor(from) - 1, Math.min(start, end)),
    high: Math.min(Math.ceil(from) + layout.needles, Math.max(start, end)),
  }
  const machine = { condition, drive: pass.drive }
  const sound = soundMachine(run, pass.pass)
  return {
    run,
    frame,
    layout,
    from,
    range,
    machine,
    sound,
    curves: stripNumbers.map((strip) => curveOf(machine, sound, strip, range)),
    broken: new Set(run.scenario.faults.map(partOfFault)),
    prefix: options.prefix,
  }
}

/** Whole needles and places between two ends of the window, the ends included. */
export const placesIn = ({ low, high }: Range): number[] =>
  Array.from({ length: Math.max(0, Math.floor(high) - Math.ceil(low) + 1) }, (_, n) => Math.ceil(low) + n)

/** Whether words at this place, in needles, stand wholly in the window; `room` is half their width, in pixels. */
export const isClear = ({ layout, from }: View, place: number, room: number): boolean => {
  const least = from - 0.5 + room / layout.pitch
  return place >= least && place <= 2 * from + layout.needles - 1 - least
}

/** Whether a needle in use stands at this place. */
export const inUse = (view: View, place: number): boolean => {
  const { first, last } = view.frame.condition.bed
  return place >= first && place <= last
}
