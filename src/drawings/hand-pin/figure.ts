import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeHandPin } from '../../words/figures/hand-pin.ts'
import { drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawNotes } from '../shared/labels.ts'
import { drawLinework } from '../shared/linework.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
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
  const { layout, prefix } = view
  setSize(svg, layout, 'hand-pin')
  const root = drawGroup(select<SVGGElement, null>(svg), `detail by-hand ${layout.shape}`)
  drawHatchings(root, prefix)
  drawLinework(root, 'side', prefix, sideLines(view))
  drawLinework(root, 'front', prefix, frontLines(view))
  drawNotes(root, 'labels', labelsOf(view))
}

export const figure: Figure = {
  id: 'hand-pin',
  number: 11,
  title: 'A pin by hand',
  sizes: layouts,
  draw,
  describe: describeHandPin,
}
