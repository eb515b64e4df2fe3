import type { Frame } from '../../mechanism/frame.ts'
import { type Needle, toNeedle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { needleHeldUp } from '../../words/figures/hold.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, needlesInSight, viewBase } from '../shared/view.ts'
import { type HoldLayout, layouts, viewedAt } from './layout.ts'

/** What the hold figure's parts need. */
export interface HoldView extends FigureView<HoldLayout> {
  /** Index of the needle shown. */
  readonly needle: Needle
  /** The needle in the middle, with a fraction while the view goes on. */
  readonly viewed: number
  /** Needles near enough to be seen. */
  readonly seen: readonly Needle[]
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): HoldView => {
  const { first, last } = frame.condition.bed
  const viewed = viewedAt(frame.x, first, last)
  const reach = options.shape === 'wide' ? 3 : 2
  const middle = Math.round(viewed)
  const base = viewBase(layouts, run, frame, options)
  return {
    ...base,
    needle: toNeedle(needleHeldUp(frame)),
    viewed,
    seen: needlesInSight(base.whole, middle - reach, middle + reach),
  }
}
