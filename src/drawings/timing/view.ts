import { passEnds } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { allStrips, type Needle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { type Curve, curveOf, soundMachine } from './compare.ts'
import type { Machine, Range } from './curves.ts'
import { layouts, type TimingLayout, windowFrom } from './layout.ts'

/** What the chart's lanes need. */
export interface TimingView extends FigureView<TimingLayout> {
  /** First needle of the window, with a fraction. */
  readonly from: number
  /** The part of this pass that the window shows, in needles. */
  readonly range: Range
  readonly machine: Machine
  /** The sound machine in the same pass; null where this one is sound. */
  readonly sound: Machine | null
  readonly curves: readonly Curve[]
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): TimingView => {
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
    ...viewBase(layouts, run, frame, options),
    from,
    range,
    machine,
    sound,
    curves: allStrips.map((strip) => curveOf(machine, sound, strip, range)),
  }
}

/** Whole needles and places between two ends of the window, the ends included. */
export const placesIn = ({ low, high }: Range): number[] =>
  Array.from({ length: Math.max(0, Math.floor(high) - Math.ceil(low) + 1) }, (_, n) => Math.ceil(low) + n)

/** Whether words at this place, in needles, are wholly in the window; `room` is half their width, in pixels. */
export const isClear = ({ layout, from }: TimingView, place: number, room: number): boolean => {
  const least = from - 0.5 + room / layout.pitch
  return place >= least && place <= 2 * from + layout.needles - 1 - least
}

/** Whether a needle in use is at this place. */
export const inUse = (view: TimingView, place: number): place is Needle => {
  const { first, last } = view.frame.condition.bed
  return place >= first && place <= last
}
