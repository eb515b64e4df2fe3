import type { Frame } from '../../mechanism/frame.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { SceneStep } from '../../words/figures/scene-step.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import type { Shape } from '../shared/figure-contract.ts'
import { drawGroup, into } from '../shared/svg.ts'
import type { SceneLabel } from './draw-labels.ts'
import type { View } from './engine/camera.ts'
import { drawScene } from './draw-scene.ts'
import { stepLayouts } from './step-layout.ts'
import { drawWords, pictureOf, wordsOf } from './step-picture.ts'

/** How the machine is seen: as a step sees it, or from another place; and which of its parts is lit. */
export interface SceneSeen {
  readonly step: SceneStep
  /** The step's own place where it is null. */
  readonly view: View | null
  readonly lit: NumberedPart | null
}

/** Draws the machine as it is seen, frame after frame, into one picture; labels keep their margins from frame to frame. */
export const stepFrames = (
  svg: SVGSVGElement,
  shape: Shape,
  { step, view, lit }: SceneSeen,
): ((run: Run, frame: Frame) => void) => {
  const layout = stepLayouts[shape]
  const { x, y, scale } = layout.machine
  const root = into(svg)
  const place = drawGroup(root, 'scene-place', { transform: `translate(${x} ${y}) scale(${scale})` })
  const machine = drawGroup(place, 'scene-machine')
  const words = drawGroup(root, `scene-words ${shape}`)
  let labels: readonly SceneLabel[] = []
  return (run, frame) => {
    const picture = pictureOf(run, frame, step, view, lit)
    drawScene(machine, picture.scene, picture.camera, picture.marked)
    const now = wordsOf(picture, layout, labels)
    labels = now.labels
    drawWords(words, layout, picture, now)
  }
}
