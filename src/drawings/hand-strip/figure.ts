import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeHandStrip } from '../../words/figures/hand-strip.ts'
import { drawByHand } from '../shared/detail/by-hand.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { actsLines } from './acts.ts'
import { labelsOf } from './labels.ts'
import { layouts } from './layout.ts'
import { bedLines, handLines, stripLines } from './plan.ts'
import { viewOf } from './view.ts'

/**
 * Figure 10, a strip by hand: from above the strips' ends, with the fingertip that pushes one along the bed, and what a
 * hand feels of each; from the front, one strip held over while a butt is pressed down and let go.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  drawByHand(
    svg,
    'hand-strip',
    view,
    { plan: [...bedLines(view), ...stripLines(view), ...handLines(view)], acts: actsLines(view) },
    labelsOf(view),
  )
}

export const figure: Figure = {
  id: 'hand-strip',
  number: 10,
  title: 'A strip by hand',
  sizes: layouts,
  draw,
  describe: describeHandStrip,
}
