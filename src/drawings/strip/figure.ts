import { select } from 'd3'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { wholeBedOf } from '../../mechanism/bed.ts'
import { describeStrip, leftOver } from '../../words/figures/strip.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawClip, drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions, Shape } from '../shared/figure-contract.ts'
import { drawNotes } from '../shared/labels.ts'
import { drawLinework } from '../shared/linework.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { bar, barGlows, bed, butts, carriage, catches, endParts, leftBehind } from './bar.ts'
import { balloonsOf, labelsOf } from './labels.ts'
import { bedAt, layoutOf, layouts } from './layout.ts'
import { dimensionLines } from './lines.ts'
import { panelLabels, panelLines, panelPictures } from './panels.ts'
import { lugs, pins, plate, rodGlows, rods } from './rods.ts'
import { viewOf } from './view.ts'

/**
 * Figure 5, one strip: in the bed, with its three rods, its return spring and all its catches, which reach up to the
 * butts, along the whole bed; the carriage where it is; and large, the catch at the butt under the presser beside one that has nothing to catch.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  const pictures = panelPictures(view)
  setSize(svg, layout, 'strip')
  const root = drawGroup(select<SVGGElement, null>(svg), `detail one-strip ${layout.shape}`)
  drawHatchings(root, prefix)
  drawLinework(root, 'machine', prefix, [
    ...bed(view),
    ...carriage(view),
    { look: 'glow line', d: rodGlows(view) },
    { look: 'glow', d: barGlows(view) },
    leftBehind(view, view.isBroken ? leftOver(frame, view.strip) : 0),
    ...endParts(view),
    bar(view),
    ...lugs(view),
    ...catches(view),
    ...butts(view),
    plate(view),
    ...rods(view),
    ...pins(view),
  ])
  for (const { name, window, lines } of pictures)
    drawLinework(root, name, prefix, lines, { 'clip-path': drawClip(root, prefix, name, window) })
  drawLinework(root, 'lines', prefix, [...dimensionLines(view), ...panelLines(view)])
  drawNotes(root, 'labels', [...labelsOf(view), ...panelLabels(view)])
  drawBalloons(root, balloonsOf(view))
}

/** The place of the carriage for a point along the bed; null below it, where the details are. */
const placeAt = (shape: Shape, x: number, y: number, frame: Frame): number | null => {
  const whole = wholeBedOf(frame.condition.dimensions.needles)
  const layout = layoutOf(shape, whole)
  if (y > layout.panel.top) return null
  const { turnMark } = dimensions
  return Math.min(whole.last + turnMark, Math.max(whole.first - turnMark, bedAt(layout, x)))
}

export const figure: Figure = {
  id: 'strip',
  number: 5,
  title: 'One strip',
  sizes: layouts,
  draw,
  describe: describeStrip,
  placeAt,
}
