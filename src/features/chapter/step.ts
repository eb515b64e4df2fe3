import { readCarriagePosition } from '../../link/carriage-position.ts'
import { read } from '../../link/read.ts'
import type { CardLibrary, State } from '../../link/state.ts'
import { dataOf, required } from '../../browser/dom.ts'
import type { SceneAttributes } from '../../words/figures/scene-step.ts'

/** A named stop of a chapter. */
export interface Step {
  readonly id: string
  readonly title: string
  readonly element: HTMLElement
  readonly figure: string
  /** How it shows the machine in three dimensions, where that is its figure. */
  readonly scene: SceneAttributes
  readonly state: State
  /** Where the carriage goes while the step is scrolled through; where it is if it does not move. */
  readonly to: number
}

/** How a step shows the machine in three dimensions, as its element says. */
const sceneOf = ({ dataset: { view, layers, subject, also, hand } }: HTMLElement): SceneAttributes => ({
  view,
  layers,
  subject,
  also,
  hand,
})

/** The chapter's steps, in the order of its text. */
export const readSteps = (root: HTMLElement, library: CardLibrary): Step[] =>
  [...root.querySelectorAll<HTMLElement>('.step')].map((element) => {
    const { state } = read(dataOf(element, 'state'), library)
    return {
      id: element.id,
      title: required(element, 'h2', HTMLHeadingElement).textContent.trim(),
      element,
      figure: dataOf(element, 'figure'),
      scene: sceneOf(element),
      state,
      to: readCarriagePosition(element.dataset.to ?? '') ?? state.at,
    }
  })

/** Whether the carriage moves while the step is scrolled through. */
export const movesCarriage = ({ state, to }: Step): boolean => to !== state.at
