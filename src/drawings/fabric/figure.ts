import { select } from 'd3'
import { askedRow, knittedRow } from '../../mechanism/fabric.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeFabric } from '../../words/figures/fabric.ts'
import { clipTo } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { drawDefinitions } from './definitions.ts'
import { drawLabels, drawNames } from './labels.ts'
import { layouts } from './layout.ts'
import { drawCardRow, drawSetting } from './setting-band.ts'
import { drawFabric, type Row, rowsOf } from './stitches.ts'
import { clothView, clothX, slideX, viewOf } from './view.ts'

/**
 * Figure 8, row and fabric: the card's row, the needles it sets out, the fabric as it is knitted and, below, as the
 * card asks for it. The needles are one row ahead of the fabric. Keeps nothing between calls.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout } = view
  setSize(svg, layout, 'fabric')
  const root = drawGroup(select<SVGGElement, null>(svg), `fabric ${layout.shape}`)
  drawDefinitions(root, view)
  const window = drawGroup(root, 'window', { 'clip-path': clipTo(view.prefix, 'window') })
  const band = drawGroup(window, 'sliding', { transform: `translate(${px(slideX(view))} 0)` })
  const wide = clothView(view)
  const asked = view.passes.map((pass) => askedRow(run, pass))
  const cloth = view.passes.map((pass) => knittedRow(run, pass))
  const knitted = rowsOf(wide, layout.knitted, cloth, asked)
  const piece = (name: string, rows: readonly Row[]): void => {
    const group = drawGroup(band, name, { transform: `translate(${px(clothX(view, wide))} 0)` })
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
  describe: describeFabric,
}
