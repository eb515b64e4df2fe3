import type { Frame } from '../../mechanism/frame.ts'
import type { Needle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, type Group } from '../shared/svg.ts'
import { type FigureView, needlesInSight, needleSlots, viewBase } from '../shared/view.ts'
import { type ChainLayout, layouts, windowFrom } from './layout.ts'

/** What the figure's bands need: the frame, where the window is, and which parts are broken. */
export interface ChainView extends FigureView<ChainLayout> {
  /** First needle of the window, with a fraction. */
  readonly from: number
  /** How far the card has still to roll to the row being read, in rows. */
  readonly roll: number
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): ChainView => {
  const layout = layouts[options.shape]
  const base = viewBase(layouts, run, frame, options)
  return {
    ...base,
    from: options.from ?? windowFrom(layout, frame.x, frame.pass.way, base.whole),
    roll: options.roll ?? 0,
  }
}

/**
 * A group that slides with the bed as the window moves. What is placed in it by `bedX` keeps its place there: only the group
 * is moved, and not some hundreds of parts.
 */
export const slidingWithBed = (parent: Group, name: string, { layout, from }: ChainView): Group =>
  drawGroup(parent, name, { transform: `translate(${px(-from * layout.pitch)} 0)` })

/** The needles in the window, each in a slot that it keeps while the window moves; null in a slot past the bed's end. */
export const slots = ({ from, layout, whole }: ChainView): (Needle | null)[] =>
  needleSlots(whole, Math.floor(from) - 1, layout.needles + 2)

/** The same needles from the left, without the slots that hold none. */
export const needlesInWindow = ({ from, layout, whole }: ChainView): readonly Needle[] =>
  needlesInSight(whole, Math.floor(from) - 1, Math.floor(from) + layout.needles)
