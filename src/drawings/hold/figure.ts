import { select } from 'd3'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import { describeHold } from '../../words/figures/hold.ts'
import { drawBalloons } from '../shared/balloons.ts'
import { drawClip, drawHatchings } from '../shared/definitions.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawNotes } from '../shared/labels.ts'
import { drawLinework } from '../shared/linework.ts'
import { drawGroup, setSize } from '../shared/svg.ts'
import { dimensionLines, levelLines } from './dimensions.ts'
import { balloonsOf, sectionLabels } from './labels.ts'
import { layouts, levelY } from './layout.ts'
import { bed, butts, catches, firstGate, glows, presser, springs } from './section.ts'
import { stillFrames, stillLabels, stillsLines } from './stills.ts'
import { viewOf } from './view.ts'

/**
 * Figure 6, the hold: one needle in its trick, seen along the needle from the front, with the presser over it and, behind
 * it, the strip in the bed whose catch reaches up over its spur; further on the first gate, up to which it is held. Below,
 * the three moments of every hold. The view stands still while the presser lets go of a needle.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, options: FigureOptions): void => {
  const view = viewOf(run, frame, options)
  const { layout, prefix } = view
  setSize(svg, layout, 'hold')
  const root = drawGroup(select<SVGGElement, null>(svg), `detail hold ${layout.shape}`)
  drawHatchings(root, prefix)
  const clip = drawClip(root, prefix, 'section', {
    x: layout.left,
    y: 0,
    width: layout.right - layout.left,
    height: levelY(layout, layout.foot) + 1,
  })
  const section = [
    ...bed(view),
    ...springs(view),
    ...glows(view),
    ...catches(view),
    ...butts(view),
    ...presser(view),
    firstGate(view),
  ]
  drawLinework(root, 'section', prefix, section, { 'clip-path': clip })
  drawLinework(root, 'levels', prefix, [...levelLines(view), ...dimensionLines(view)])
  drawLinework(root, 'stills', prefix, [...stillFrames(view), ...stillsLines(view)])
  drawNotes(root, 'labels', [...sectionLabels(view), ...stillLabels(view)])
  drawBalloons(root, balloonsOf(view))
}

export const figure: Figure = {
  id: 'hold',
  number: 6,
  title: 'The hold',
  sizes: layouts,
  draw,
  describe: describeHold,
}
