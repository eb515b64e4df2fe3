import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describePlace } from '../../words/figures/place.ts'
import { drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawGroup, type Group, setSize } from '../shared/svg.ts'
import { drawBedLines, drawBody, drawDeck } from './bed.ts'
import { drawArm, drawBelt, drawBeltBehind } from './belt.ts'
import { drawCard } from './card.ts'
import { drawCarriage } from './carriage.ts'
import { drawLabels } from './labels.ts'
import { layouts } from './layout.ts'
import { drawNeedles } from './needles.ts'
import { drawNeedlePush, drawReaderPush, drawStripPush } from './push.ts'
import { drawBackLegs, drawCheek, drawPins, drawReaderBody, drawRockers } from './reader.ts'
import { drawRodPlate, drawRods, drawStripEnds, drawStrips } from './strips.ts'
import { type PlaceView, viewOf } from './view.ts'

/** The machine from its back to its front: what is nearer is painted over what is further away. */
const drawMachine = (root: Group, view: PlaceView): void => {
  drawBody(root, view)
  drawStripEnds(root, view)
  drawDeck(root, view, 'left')
  drawStripPush(root, view, 'cut')
  drawStrips(root, view)
  drawDeck(root, view, 'right')
  drawStripPush(root, view, 'deck')
  drawBedLines(root, view)
  drawBeltBehind(root, view)
  drawRodPlate(root, view)
  drawCheek(root, view, 'left')
  drawReaderPush(root, view, 'behind')
  drawRods(root, view, 'behind')
  drawCheek(root, view, 'right')
  drawReaderBody(root, view)
  drawBackLegs(root, view, 'below')
  drawCard(root, view)
  drawBackLegs(root, view, 'above')
  drawBelt(root, view)
  drawReaderPush(root, view, 'front')
  drawPins(root, view, 'below')
  drawPins(root, view, 'above')
  drawRockers(root, view)
  drawRods(root, view, 'front')
  drawNeedlePush(root, view)
  drawNeedles(root, view)
  drawArm(root, view)
  drawCarriage(root, view)
}

/**
 * Figure 0, in place: the whole machine in dimetric projection, its deck and its reader cut open, with every part at
 * the frame's state. Paints from the back to the front, so that what is hidden stays hidden. Keeps nothing between calls.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout } = view
  setSize(svg, layout, 'place')
  const root = drawGroup(select<SVGGElement, null>(svg), `place ${layout.shape}`)
  drawHatchings(root, options.prefix)
  drawMachine(root, view)
  drawLabels(root, view)
}

export const figure: Figure = {
  id: 'place',
  number: 0,
  title: 'In place',
  sizes: layouts,
  draw,
  describe: (_, frame) => describePlace(frame),
}
