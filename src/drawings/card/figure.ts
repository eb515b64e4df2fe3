import { select } from 'd3'
import { withinPass, wholeBedOf } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeCard } from '../../words/figures/card.ts'
import { drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { drawBed, drawBedWords, drawCarriage, drawRods, drawShort } from './bed.ts'
import { drawEnd } from './ends.ts'
import { drawLabels } from './labels.ts'
import { bedAt, layoutOf, layouts } from './layout.ts'
import { drawLeftCard, drawSection } from './loop.ts'
import { drawPins } from './pins-row.ts'
import { drawCase, drawSheet, drawWrongMarks } from './sheet.ts'
import { viewOf } from './view.ts'

/**
 * Figure 2, card and turn: the card from the front with the row being read deep in the reader, both ends of the reader
 * with their pawls and the card's loop, and below them the bed with the carriage and the turn marks that work the
 * pawls. `options.roll` takes the figure through a turn: pins down, card on, pins up.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout } = view
  setSize(svg, layout, 'card')
  const root = drawGroup(select<SVGGElement, null>(svg), `card-figure ${layout.shape}`)
  drawHatchings(root, options.prefix)
  drawSheet(drawGroup(root, 'front'), view)
  drawCase(drawGroup(root, 'case-front'), view)
  drawWrongMarks(drawGroup(root, 'front-wrong'), view)
  drawPins(drawGroup(root, 'front-pins'), view)
  drawRods(drawGroup(root, 'linkage'), view)
  drawSection(root, view, layout.rightEnd)
  drawLeftCard(root, view, layout.leftEnd)
  drawEnd(root, view, 'left', layout.leftEnd)
  drawEnd(root, view, 'right', layout.rightEnd)
  const bed = drawGroup(root, 'bed')
  drawBed(bed, view)
  drawShort(bed, view)
  drawCarriage(bed, view)
  drawBedWords(bed, view)
  drawLabels(root, view)
}

export const figure: Figure = {
  id: 'card',
  number: 2,
  title: 'Card and turn',
  sizes: layouts,
  draw,
  describe: describeCard,
  placeAt: (shape, x, y, frame) => {
    const layout = layoutOf(shape, wholeBedOf(frame.condition.dimensions.needles))
    if (y < layout.bedTop - 22 || y > layout.bedBottom + 22) return null
    return withinPass(bedAt(layout, x), frame.pass.pass, frame.condition.bed)
  },
}
