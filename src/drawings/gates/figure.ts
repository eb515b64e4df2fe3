import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { wholeBedOf } from '../../mechanism/bed.ts'
import { describeGates } from '../../words/figures/gates.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawClip, drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions, Shape } from '../shared/figure-contract.ts'
import { drawNotes } from '../shared/labels.ts'
import { drawLinework } from '../shared/linework.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { dimensionLines, projections } from './dimensions.ts'
import { balloonsOf, keyLines, labelsOf } from './labels.ts'
import { behindAt, layouts } from './layout.ts'
import { planButts, planCams, planTricks, planWays } from './plan.ts'
import { sideBed, sideButts, sideCams, sideWays } from './side.ts'
import { viewOf } from './view.ts'

/**
 * Figure 7, the gates: the ways of the butts through the carriage from above, and below on the same axis how high each
 * butt is. The carriage stands still in the picture and the butts pass it.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  setSize(svg, layout, 'gates')
  const root = drawGroup(select<SVGGElement, null>(svg), `detail gates ${layout.shape}`)
  drawHatchings(root, prefix)
  const clip = drawClip(root, prefix, 'views', { x: 1, y: 0, width: layout.width - 2, height: layout.height })
  const views = [
    ...planCams(view),
    planTricks(view),
    ...projections(view),
    ...planWays(view),
    ...planButts(view),
    ...sideBed(view),
    ...sideButts(view, true),
    ...sideCams(view),
    ...sideButts(view, false),
    ...sideWays(view),
  ]
  drawLinework(root, 'views', prefix, views, { 'clip-path': clip })
  drawLinework(root, 'dimensions', prefix, [...dimensionLines(view), ...keyLines(view)])
  drawNotes(root, 'labels', labelsOf(view))
  drawBalloons(root, balloonsOf(view))
}

/**
 * The place of the bed that passes under a point of the picture, in the frame given. As the bed moves under the
 * carriage, a drag is measured with the frame in which it began.
 */
const placeAt = (shape: Shape, x: number, _: number, frame: Frame): number => {
  const place = frame.x - frame.pass.way * behindAt(layouts[shape], frame.pass.way, x)
  const { needles, turnMark } = frame.condition.dimensions
  const { first, last } = wholeBedOf(needles)
  return Math.min(last + turnMark, Math.max(first - turnMark, place))
}

export const figure: Figure = {
  id: 'gates',
  number: 7,
  title: 'The gates',
  sizes: layouts,
  draw,
  describe: describeGates,
  placeAt,
}
