import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeTiming } from '../../words/figures/timing.ts'
import { drawClip, drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { px } from '../shared/paths.ts'
import { drawGroup, drawShape, type Group, setSize } from '../shared/svg.ts'
import { drawCardLane, drawColumnNumbers } from './card-lane.ts'
import { drawCams, drawCursor, drawGrid, drawMarks } from './cursor.ts'
import { drawLabels } from './labels.ts'
import { layouts, windowFrom, windowX } from './layout.ts'
import { drawLegend } from './legend.ts'
import { drawNeedleLane, drawNeedleNames } from './needle-lane.ts'
import { activePushes, drawPushLane } from './push-lane.ts'
import { activeShifts, drawCurves, drawFalls, drawLetGos, drawMissing, drawVerdicts } from './strip-lanes.ts'
import { type TimingView, viewOf } from './view.ts'

/** A group clipped to the window or to a piece of it, and in it the group that moves with the bed. */
const scrolled = (root: Group, view: TimingView, name: string, clip: string): Group => {
  const outer = drawGroup(root, name, { 'clip-path': clip })
  const inner = drawGroup(outer, 'scroll', {
    transform: `translate(${px(windowX(view.layout, view.from, 0))} 0)`,
  })
  return inner
}

const clips = (root: Group, view: TimingView): { window: string; past: string } => {
  const { layout, frame, prefix } = view
  const left = layout.left - layout.pitch / 2
  const width = layout.needles * layout.pitch
  const now = windowX(layout, view.from, frame.x)
  const all = { y: 0, height: layout.height }
  const past = frame.pass.way === 1 ? { x: left, width: now - left } : { x: now, width: left + width - now }
  return {
    window: drawClip(root, prefix, 'window', { ...all, x: left, width }),
    past: drawClip(root, prefix, 'past', { ...all, ...past }),
  }
}

/**
 * Figure 4, the timing chart: the carriage's place across, one lane for the card, one for the pushes of all pins, one
 * for each strip and one for the needles, like a logic analyser. The curves are the model's own.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout } = view
  setSize(svg, layout, 'timing')
  const root = drawGroup(select<SVGGElement, null>(svg), `timing-figure ${layout.shape}`)
  drawHatchings(root, options.prefix)
  const { window, past } = clips(root, view)
  drawGrid(drawGroup(root, 'grid'), view)
  const under = scrolled(root, view, 'under', window)
  drawShape(under, 'path', 'amber', { d: activePushes(view) + activeShifts(view) })
  drawMarks(under, view)
  const toCome = scrolled(root, view, 'coming', window)
  const happened = scrolled(root, view, 'past', past)
  drawPushLane(toCome, happened, view)
  drawCurves(toCome, happened, view)
  const over = scrolled(root, view, 'over', window)
  drawMissing(over, view)
  drawLetGos(over, view)
  drawFalls(over, view)
  drawCursor(root, view)
  const marks = scrolled(root, view, 'marks', window)
  drawCardLane(drawGroup(marks, 'card-lane'), view)
  drawColumnNumbers(drawGroup(marks, 'column-numbers'), view)
  drawVerdicts(marks, view)
  drawNeedleLane(marks, view)
  drawNeedleNames(drawGroup(marks, 'needle-labels'), view)
  drawCams(root, view, window)
  drawLabels(root, view)
  drawLegend(root, view)
}

export const figure: Figure = {
  id: 'timing',
  number: 4,
  title: 'Timing chart',
  sizes: layouts,
  draw,
  describe: describeTiming,
  placeAt: (shape, x, y, frame) => {
    const layout = layouts[shape]
    const from = windowFrom(layout, frame.x, frame.pass.way, frame.condition.bed)
    const place = from + (x - layout.left) / layout.pitch
    const isInside = place >= from - 0.5 && place <= from + layout.needles - 0.5
    return isInside && y >= layout.numbers && y <= layout.cursor ? place : null
  },
}
