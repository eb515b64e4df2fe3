import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeChain } from '../../words/figures/chain.ts'
import { drawHatchings, drawWindowClip, parallel } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { drawButts, drawCarriage } from './butt-band.ts'
import { drawCard } from './card-band.ts'
import { drawLabels, drawVerdicts } from './labels.ts'
import { layouts, windowOf } from './layout.ts'
import { drawMap } from './map-band.ts'
import { drawNeedles } from './needle-band.ts'
import { drawPush } from './push-band.ts'
import { drawReader } from './reader-band.ts'
import { drawStrips } from './strip-band.ts'
import { viewOf } from './view.ts'
import { drawWholeCard } from './whole-card.ts'

/**
 * Figure 1, the whole chain: card row, pins and sweep, rockers, strips and catches, butts under the carriage's cams,
 * and the needles sorted behind it; below, all the needles of the bed. Draws into an empty `svg` or onto what an
 * earlier call drew there, when the site is built as well as in the browser. Keeps nothing between calls.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  setSize(svg, view.layout, 'chain')
  const root = drawGroup(select<SVGGElement, null>(svg), `chain ${view.layout.shape}`)
  drawHatchings(root, view.prefix, parallel)
  drawWindowClip(root, view.prefix, windowOf(view.layout))
  drawPush(root, view)
  drawCard(root, view)
  drawWholeCard(root, view)
  drawStrips(root, view)
  drawReader(root, view)
  drawCarriage(root, view)
  drawNeedles(root, view)
  drawButts(root, view)
  drawVerdicts(root, view)
  drawLabels(root, view)
  drawMap(root, view)
}

export const figure: Figure = {
  id: 'chain',
  number: 1,
  title: 'The whole chain',
  sizes: layouts,
  draw,
  describe: (_, frame) => describeChain(frame),
}
