import { select } from 'd3'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeStrip, leftOver } from '../../words/figures/strip.ts'
import { drawInk, drawLettering } from '../shared/detail/ink.ts'
import { drawBalloons, drawClip, drawHatchings } from '../shared/drafting.ts'
import type { Figure, FigureOptions, Shape } from '../shared/figure-contract.ts'
import { bar, barGlows, bed, butts, carriage, catches, endParts, leftBehind } from './bar.ts'
import { balloonsOf, labelsOf } from './labels.ts'
import { bedAt, layouts } from './layout.ts'
import { lineInk } from './lines.ts'
import { panelLabels, panelLines, panelPictures } from './panels.ts'
import { pins, rodGlows, rods, wedges } from './rods.ts'
import { viewOf } from './view.ts'
import { keep, part, setSize } from '../shared/svg.ts'

/**
 * Figure 5, one strip: its three rods, its return spring and all its catches along the whole bed, the carriage where it
 * stands; and large, the catch at the butt under the presser beside one that has nothing to catch.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  const pictures = panelPictures(view)
  setSize(svg, layout, 'strip')
  const root = part(select<SVGGElement, null>(svg), 'g', `detail one-strip ${layout.name}`)
  drawHatchings(root, prefix)
  drawInk(root, 'machine', prefix, [
    ...bed(view),
    ...carriage(view),
    { kind: 'glow', d: rodGlows(view) + barGlows(view) },
    ...butts(view),
    leftBehind(view, view.isBroken ? leftOver(frame, view.strip) : 0),
    ...endParts(view),
    ...wedges(view),
    bar(view),
    ...catches(view),
    ...rods(view),
    ...pins(view),
  ])
  for (const { name, window, inks } of pictures)
    keep(drawInk(root, name, prefix, inks), 'clip-path', drawClip(root, prefix, name, window))
  drawInk(root, 'lines', prefix, [...lineInk(view), ...panelLines(view)])
  drawLettering(root, 'labels', [...labelsOf(view), ...panelLabels(view)])
  drawBalloons(root, balloonsOf(view))
}

/** The place of the carriage for a point along the bed; null below it, where the details are. */
const placeAt = (shape: Shape, x: number, y: number): number | null => {
  const layout = layouts[shape]
  if (y > layout.panel.top) return null
  const { turnMark, needles } = dimensions
  return Math.min(needles - 1 + turnMark, Math.max(-turnMark, bedAt(layout, x)))
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
