import type { Frame } from '../../mechanism/frame.ts'
import type { Column } from '../../mechanism/indices.ts'
import type { Run } from '../../mechanism/pass.ts'
import { columnFelt } from '../../words/figures/hand-pin.ts'
import type { FigureOptions } from '../shared/figure-contract.ts'
import { type FigureView, viewBase } from '../shared/view.ts'
import { type HandPinLayout, layouts } from './layout.ts'

/** What the parts of the figure need. */
export interface HandPinView extends FigureView<HandPinLayout> {
  readonly column: Column
}

export const viewOf = (run: Run, frame: Frame, options: FigureOptions): HandPinView => ({
  ...viewBase(layouts, run, frame, options),
  column: columnFelt(run, frame),
})
