import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeHandPin } from '../../words/figures/hand-pin.ts'
import { drawByHand } from '../shared/detail/by-hand.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { frontLines } from './front.ts'
import { labelsOf } from './labels.ts'
import { layouts } from './layout.ts'
import { sideLines } from './side.ts'
import { viewOf } from './view.ts'

/**
 * Figure 11, a pin by hand, with the card out: from the side, pressed down and let go; from the front, its front leg pushed
 * to the left, and what its strip does.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  drawByHand(svg, 'hand-pin', view, { side: sideLines(view), front: frontLines(view) }, labelsOf(view))
}

export const figure: Figure = {
  id: 'hand-pin',
  number: 11,
  title: 'A pin by hand',
  sizes: layouts,
  draw,
  describe: describeHandPin,
}
