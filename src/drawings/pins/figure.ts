import { select } from 'd3'
import { describePins } from '../../words/figures/pins.ts'
import { withinPass } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { drawClip, drawHatchings } from '../shared/drafting.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawColumns, drawPlate } from './columns.ts'
import { drawLabels } from './labels.ts'
import { firstColumn, columnPitch, layouts, rightOf } from './layout.ts'
import { drawClearance, drawGaps, drawHeights, drawLean, drawLevels } from './levels.ts'
import { drawMiddles, drawPlan } from './plan.ts'
import { drawCardSection, drawSweep } from './section.ts'
import { viewOf } from './view.ts'
import { change, part, setSize } from '../shared/svg.ts'

/**
 * Figure 3, pin heights: the columns around the sweep, above from above with the clearance of each pin in its hole,
 * below cut along the row of pins, all to one scale. The sweep's edge stands between the heights of the pins that the
 * card lets through and of those that it stops, and both margins are dimensioned.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  setSize(svg, layout, 'pins')
  const root = part(select<SVGGElement, null>(svg), 'g', `pins-figure ${layout.shape}`)
  drawHatchings(root, prefix)
  const box = { x: layout.left, width: rightOf(layout) - layout.left, y: 0, height: layout.rods }
  const clip = drawClip(root, prefix, 'window', box)
  const window = part(root, 'g', 'window')
  change(window, 'clip-path', () => clip)
  const plan = part(window, 'g', 'plan')
  const band = { ...box, y: layout.planTop - 3, height: layout.planBottom - layout.planTop + 6 }
  const planClip = drawClip(root, prefix, 'plan', band)
  change(plan, 'clip-path', () => planClip)
  drawPlan(plan, view)
  drawSweep(part(window, 'g', 'sweep'), view)
  drawCardSection(part(window, 'g', 'cut-card'), view)
  drawPlate(part(window, 'g', 'plate'), view)
  drawColumns(part(window, 'g', 'section-columns'), view)
  drawMiddles(part(window, 'g', 'middles'), view)
  drawLevels(part(root, 'g', 'levels'), view)
  drawGaps(part(root, 'g', 'gaps'), view)
  drawHeights(part(root, 'g', 'heights'), view)
  const over = part(root, 'g', 'over')
  change(over, 'clip-path', () => clip)
  drawLean(part(over, 'g', 'lean'), view)
  drawClearance(part(over, 'g', 'clearance'), view)
  drawLabels(root, view)
}

export const figure: Figure = {
  id: 'pins',
  number: 3,
  title: 'Pin heights',
  sizes: layouts,
  draw,
  describe: describePins,
  placeAt: (shape, x, y, frame) => {
    const layout = layouts[shape]
    if (x < layout.left || x > rightOf(layout) || y < layout.planTop || y > layout.rods) return null
    const first = firstColumn(layout, frame.sweepAt)
    const column = first + (x - layout.left) / columnPitch(layout) - 0.5
    return withinPass(frame.x + column - frame.sweepAt, frame.pass.pass, frame.condition.bed)
  },
}
