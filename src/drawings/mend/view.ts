import { stripOfNeedle } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import { type Needle, ofNeedle } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { Shape } from '../shared/figure-contract.ts'
import { type NeedleMark, needleMark } from '../shared/needle-mark.ts'
import { type FigureView, needlesInSight, viewBase } from '../shared/view.ts'
import { lastNeedle, type MendLayout, layouts } from './layout.ts'

/** What the caller chooses. */
export interface MendOptions {
  readonly shape: Shape
  /** Makes the ids of patterns and clips unique on a page. */
  readonly prefix: string
  /** How far the fabric has still to go down after the turn, in rows: 1 to 0. */
  readonly slide?: number
}

/** What each part of the picture is drawn from. */
export interface MendView extends FigureView<MendLayout> {
  readonly indexes: readonly Needle[]
  readonly slide: number
}

export const viewOf = (run: Run, frame: Frame, { shape, prefix, slide = 0 }: MendOptions): MendView => {
  const layout = layouts[shape]
  const base = viewBase(layouts, run, frame, { shape, prefix })
  return {
    ...base,
    indexes: needlesInSight(base.whole, layout.first, lastNeedle(layout)),
    slide,
  }
}

/** A needle's mark; until the carriage has come to it, it is what the pass before made of it. */
export const markOf = ({ frame }: MendView, index: Needle): NeedleMark => {
  const mark = needleMark(frame, index)
  if (mark === 'set') return 'selected'
  const isLeftOut =
    mark === 'ahead' && frame.before !== null && ofNeedle(frame.before.asked, index) === 'selected'
  return isLeftOut ? 'missed' : mark
}

/** Whether the strip of a needle is broken. */
export const isBroken = ({ broken, frame }: MendView, index: Needle): boolean =>
  broken.has(`strip.${stripOfNeedle(index, frame.condition)}`)
