import { partOfFault } from '../../mechanism/fault.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { needleHeldUp } from '../../words/figures/hold.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type Layout, layouts, viewedAt } from './layout.ts'

/** What the hold figure's parts need. */
export interface View {
  readonly frame: Frame
  readonly layout: Layout
  /** Index of the needle shown. */
  readonly needle: number
  /** The needle in the middle, with a fraction while the view goes on. */
  readonly viewed: number
  /** Needles near enough to be seen. */
  readonly seen: readonly number[]
  /** Ids of the parts with a fault. */
  readonly broken: ReadonlySet<string>
  readonly prefix: string
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): View => {
  const layout = layouts[options.shape]
  const { first, last } = frame.condition.bed
  const viewed = viewedAt(frame.x, first, last)
  const reach = options.shape === 'wide' ? 3 : 2
  const middle = Math.round(viewed)
  const seen: number[] = []
  for (let index = Math.max(0, middle - reach); index <= Math.min(199, middle + reach); index++)
    seen.push(index)
  return {
    frame,
    layout,
    needle: needleHeldUp(frame),
    viewed,
    seen,
    broken: new Set(run.scenario.faults.map(partOfFault)),
    prefix: options.prefix,
  }
}
