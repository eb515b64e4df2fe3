import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeHandBar } from '../../words/figures/hand-bar.ts'
import { drawByHand } from '../shared/detail/by-hand.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { viewBase } from '../shared/view.ts'
import { labelsOf } from './labels.ts'
import { layouts } from './layout.ts'
import { planHand, planLines } from './plan.ts'
import { sectionsLines } from './sections.ts'

/**
 * Figure 12, the retainer bar by hand: from above, drawn out of the bed's end; in section, what its padding is like where
 * it is sound and where it is tired, with this machine's own framed.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewBase(layouts, run, frame, options)
  drawByHand(
    svg,
    'hand-bar',
    view,
    { plan: [...planLines(view), ...planHand(view)], sections: sectionsLines(view) },
    labelsOf(view),
  )
}

export const figure: Figure = {
  id: 'hand-bar',
  number: 12,
  title: 'The retainer bar by hand',
  sizes: layouts,
  draw,
  describe: describeHandBar,
}
