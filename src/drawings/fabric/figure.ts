import { select } from 'd3'
import { askedRow, knittedRow } from '../../mechanism/fabric.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { fabricWords } from '../../words/figures/fabric.ts'
import { drawDefinitions } from './defs.ts'
import { drawLabels, drawNames } from './labels.ts'
import { layouts } from './layout.ts'
import { drawCardRow, drawSetting } from './setting-band.ts'
import { drawFabric, type Row, rowsOf } from './stitches.ts'
import { clothView, clothX, slideX, viewOf } from './view.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { change, keep, part, px, setSize } from '../shared/svg.ts'

/**
 * Figure 8, row and fabric: the card's row, the needles it sets out, the fabric as it is knitted and, below, as the
 * card asks for it. The needles are one row ahead of the fabric. Keeps nothing between calls.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout } = view
  setSize(svg, layout, 'fabric')
  const root = part(select<SVGGElement, null>(svg), 'g', `fabric ${layout.name}`)
  drawDefinitions(root, view)
  const window = keep(part(root, 'g', 'window'), 'clip-path', `url(#${view.prefix}-window)`)
  const band = part(window, 'g', 'sliding')
  change(band, 'transform', () => `translate(${px(slideX(view))} 0)`)
  const wide = clothView(view)
  const asked = view.passes.map((pass) => askedRow(run, pass))
  const cloth = view.passes.map((pass) => knittedRow(run, pass))
  const knitted = rowsOf(wide, layout.knitted, cloth, asked)
  const piece = (name: string, rows: readonly Row[]): void => {
    const group = part(band, 'g', name)
    change(group, 'transform', () => `translate(${px(clothX(view, wide))} 0)`)
    drawFabric(group, wide, rows)
  }
  piece('cloth knitted', knitted)
  piece('cloth asked', rowsOf(wide, layout.asked, asked, asked))
  drawCardRow(band, view)
  drawSetting(band, view)
  drawNames(band, view)
  drawLabels(root, view, knitted)
}

export const figure: Figure = {
  id: 'fabric',
  number: 8,
  title: 'Row and fabric',
  sizes: layouts,
  draw,
  describe: fabricWords,
}
