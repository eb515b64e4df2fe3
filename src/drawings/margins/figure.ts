import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import { margins as marginsOf } from '../../mechanism/margins.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeMargins } from '../../words/figures/margins.ts'
import { drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { drawBars } from './bars.ts'
import { drawChance } from './chance.ts'
import { drawLabels } from './labels.ts'
import { layouts } from './layout.ts'
import { drawLegend } from './legend.ts'
import { drawScale } from './scale.ts'

/**
 * Figure 9, margins: how much each stage has left before it fails, as wear, oil and speed leave it in a pass of this
 * way, beside the machine as new; and the chance that a needle under a hole is selected, over wear.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const layout = layouts[options.shape]
  setSize(svg, layout, 'margins')
  const root = drawGroup(select<SVGGElement, null>(svg), `margins ${layout.shape}`)
  const all = marginsOf(run, frame.pass.way)
  drawHatchings(root, options.prefix)
  drawScale(root, layout, all.length, options.prefix)
  drawBars(root, layout, all, options.prefix)
  drawLegend(root, layout, options.prefix)
  drawLabels(root, layout, run, frame, all)
  drawChance(root, layout, run, frame)
}

export const figure: Figure = {
  id: 'margins',
  number: 9,
  title: 'Margins',
  sizes: layouts,
  draw,
  describe: describeMargins,
}
