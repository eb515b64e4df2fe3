import { describeStep, wholeScene } from '../../words/figures/scene-step.ts'
import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { Figure, FigureOptions } from '../shared/figure-contract.ts'
import { drawGroup, into } from '../shared/svg.ts'
import { drawSeen, stillTimes } from './draw-scene.ts'
import { machineRoom } from './cameras.ts'
import { stepLayouts } from './step-layout.ts'
import { drawStepWords, pictureOf } from './step-picture.ts'

/**
 * Figure 13, the machine in three dimensions, as a step sees it: from a named view, with the kinds of part that the step
 * says are there, and the flag on its subject. Keeps nothing between calls but the tree of the machine's planes.
 */
const draw = (svg: SVGSVGElement, run: Run, frame: Frame, { shape, scene }: FigureOptions): void => {
  const layout = stepLayouts[shape]
  const { x, y, scale } = layout.machine
  const picture = pictureOf(run, frame, scene ?? wholeScene)
  const place = drawGroup(into(svg), 'scene-place', { transform: `translate(${x} ${y}) scale(${scale})` })
  const large = drawGroup(place, 'scene-machine', { transform: `scale(${1 / stillTimes})` })
  drawSeen(large, picture.scene, picture.camera, machineRoom, picture.marked, stillTimes)
  drawStepWords(drawGroup(into(svg), `scene-words ${shape}`), layout, picture)
}

export const figure: Figure = {
  id: 'scene',
  number: 13,
  title: 'The machine',
  sizes: stepLayouts,
  draw,
  describe: (run, frame, scene = wholeScene) => describeStep(run, frame, scene),
}
