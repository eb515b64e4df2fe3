import { loadFigure } from '../../browser/load-figure.ts'
import type { SceneSeen } from '../../drawings/scene/step-frames.ts'
import type { Figure, Shape } from '../../drawings/shared/figure-contract.ts'
import { type CardLibrary, scenarioOf, type State } from '../../link/state.ts'
import { type Frame, frameAt } from '../../mechanism/frame.ts'
import { type Run, startRun } from '../../mechanism/pass.ts'
import { readSceneStep, type SceneAttributes } from '../../words/figures/scene-step.ts'

/** A figure of the machine in a state. */
export interface MachineShown {
  /** The figure's id. */
  readonly figure: string
  readonly shape: Shape
  /** How the machine is seen, where the figure shows it in three dimensions; else null. */
  readonly scene: (Omit<SceneSeen, 'step'> & { readonly step: SceneAttributes }) | null
  readonly state: State
  readonly library: CardLibrary
}

/** A figure that is drawn apart from the page, and again for each of the machine's frames. */
export interface MachineDrawing {
  readonly figure: Figure
  readonly run: Run
  readonly frame: Frame
  readonly svg: SVGSVGElement
  /** Its size in its own pixels. */
  readonly width: number
  readonly height: number
  readonly draw: (run: Run, frame: Frame) => void
}

/** What draws a figure into a picture, fetched. */
const drawerOf = async (
  svg: SVGSVGElement,
  figure: Figure,
  { shape, scene }: MachineShown,
): Promise<MachineDrawing['draw']> => {
  if (scene) {
    const { stepFrames } = await import('../../drawings/scene/step-frames.ts')
    return stepFrames(svg, shape, { ...scene, step: readSceneStep(scene.step) })
  }
  return (run, frame) => {
    figure.draw(svg, run, frame, { shape, prefix: 'saved' })
  }
}

/** Draws a figure of the machine apart from the page, in the state it is shown in. */
export const drawMachine = async (shown: MachineShown): Promise<MachineDrawing> => {
  const { state, library, shape } = shown
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  const figure = await loadFigure(shown.figure)
  const draw = await drawerOf(svg, figure, shown)
  const run = startRun(scenarioOf(state, library))
  const frame = frameAt(run, state.pass, state.at)
  const { width, height } = figure.sizes[shape]
  draw(run, frame)
  return { figure, run, frame, svg, width, height, draw }
}
