import { at } from '../../mechanism/lookup.ts'
import { element, required } from '../../browser/dom.ts'
import type { Step } from './step.ts'

/** The bar that names the step being read, with the buttons that lead on, back, and back to the step's own state. */
export interface StepBar {
  readonly show: (index: number, steps: readonly Step[]) => void
  /** Offers the way back to the step's own state, or takes it away. */
  readonly offerReturn: (isOffered: boolean) => void
}

/** Binds the bar's buttons: `turn` goes so many steps on, `returnToStep` goes back to the step's own state. */
export const createStepBar = (
  root: HTMLElement,
  turn: (by: number) => void,
  returnToStep: () => void,
): StepBar => {
  const bar = required(root, '.step-bar', HTMLElement)
  const name = required(bar, '.step-name', HTMLElement)
  const back = required(bar, '.step-back', HTMLButtonElement)
  const forward = required(bar, '.step-forward', HTMLButtonElement)
  const goBack = required(bar, '.step-again', HTMLButtonElement)
  back.addEventListener('click', () => {
    turn(-1)
  })
  forward.addEventListener('click', () => {
    turn(1)
  })
  goBack.addEventListener('click', () => {
    returnToStep()
    forward.focus()
  })
  return {
    show: (index, steps) => {
      name.replaceChildren(
        element('span', { class: 'step-word' }, ['Step ']),
        element('span', { class: 'step-count' }, [`${index + 1} of ${steps.length}`]),
        element('span', { class: 'step-title' }, [`: ${at(steps, index).title}`]),
      )
      back.disabled = index === 0
      forward.disabled = index === steps.length - 1
    },
    offerReturn: (isOffered) => {
      goBack.hidden = !isOffered
    },
  }
}
