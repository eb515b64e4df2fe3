import { select } from 'd3'
import { withinPass } from '../../mechanism/bed.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { sweepShown } from '../../words/figures/sweep.ts'
import { describePins } from '../../words/figures/pins.ts'
import { drawClip, drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { drawColumns, drawPlates } from './columns.ts'
import { drawLabels } from './labels.ts'
import { columnPitch, firstColumn, layouts, rightOf } from './layout.ts'
import { drawClearance, drawGaps, drawHeights, drawLean, drawLevels } from './levels.ts'
import { drawFront, drawMiddles, drawPlan } from './plan.ts'
import { drawProfile } from './profile.ts'
import { drawSweep } from './section.ts'
import { viewOf } from './view.ts'

/**
 * Figure 3, pin heights: the columns around the sweep, all to one scale. Above, from above: the back legs under the card
 * with the clearance of each in its hole, and the front legs in their slanted slots with the wedge of the sweep. Below,
 * from the front: the front legs, the sweep's edge between the heights of those that stand high and low with both margins
 * dimensioned, and the rockers, which they push. Beside it one pin from the side, both its legs in one picture.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  setSize(svg, layout, 'pins')
  const root = drawGroup(select<SVGGElement, null>(svg), `pins-figure ${layout.shape}`)
  drawHatchings(root, prefix)
  const box = { x: layout.left, width: rightOf(layout) - layout.left, y: 0, height: layout.rods }
  const clip = drawClip(root, prefix, 'window', box)
  const window = drawGroup(root, 'window', { 'clip-path': clip })
  const band = { ...box, y: layout.planTop - 3, height: layout.planBottom - layout.planTop + 6 }
  const planClip = drawClip(root, prefix, 'plan', band)
  const plan = drawGroup(window, 'plan', { 'clip-path': planClip })
  drawPlan(plan, view)
  drawFront(drawGroup(window, 'front'), view)
  drawSweep(drawGroup(window, 'sweep'), view)
  drawPlates(drawGroup(window, 'plate'), view)
  drawColumns(drawGroup(window, 'section-columns'), view)
  drawMiddles(drawGroup(window, 'middles'), view)
  drawProfile(drawGroup(root, 'profile'), view)
  drawLevels(drawGroup(root, 'levels'), view)
  drawGaps(drawGroup(root, 'gaps'), view)
  drawHeights(drawGroup(root, 'heights'), view)
  const over = drawGroup(root, 'over', { 'clip-path': clip })
  drawLean(drawGroup(over, 'lean'), view)
  drawClearance(drawGroup(over, 'clearance'), view)
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
    const first = firstColumn(layout, sweepShown(frame).at)
    const column = first + (x - layout.left) / columnPitch(layout) - 0.5
    return withinPass(frame.x + column - frame.sweepAt, frame.pass.pass, frame.condition.bed)
  },
}
