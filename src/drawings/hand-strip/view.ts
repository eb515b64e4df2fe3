import type { Frame } from '../../mechanism/frame.ts'
import type { Needle, Strip } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { needlePressed } from '../../words/figures/hand-strip.ts'
import { stripShown } from '../../words/figures/strip.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { type HandStripLayout, layouts } from './layout.ts'

/** What the parts of the figure need. */
export interface HandStripView extends FigureView<HandStripLayout> {
  /** The strip at which the finger is. */
  readonly strip: Strip
  /** The needle whose butt is pressed; null where the strip has none in use. */
  readonly needle: Needle | null
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): HandStripView => {
  const strip = stripShown(run, frame)
  return { ...viewBase(layouts, run, frame, options), strip, needle: needlePressed(frame, strip) }
}
