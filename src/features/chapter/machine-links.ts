import { element, required } from '../../browser/dom.ts'
import type { Step } from './step.ts'

/** Gives the keyboard to a step's heading, so that Tab goes on in its text. */
export const focusStep = ({ element }: Step, options: FocusOptions = {}): void => {
  const heading = required(element, 'h2', HTMLHeadingElement)
  heading.setAttribute('tabindex', '-1')
  heading.focus(options)
}

/**
 * Makes the ways between each step's text and the machine, which the keyboard would reach only after all of the text:
 * buttons that are seen while they have the focus. `enter` shows the step's own state before the machine is reached.
 */
export const linkStepsWithMachine = (
  root: HTMLElement,
  steps: readonly Step[],
  enter: (index: number) => void,
): void => {
  const parts = required(root, '.parts', HTMLElement)
  const slider = required(root, '.carriage-slider', HTMLInputElement)
  const back = element('button', { type: 'button', class: 'on-focus to-text' }, ['Back to the text'])
  let from = steps[0]
  for (const [index, step] of steps.entries()) {
    const button = element('button', { type: 'button', class: 'on-focus to-machine' }, ['To the machine'])
    button.addEventListener('click', () => {
      from = step
      enter(index)
      // Only the whole chain has parts to walk to.
      if (parts.checkVisibility()) parts.focus()
      else slider.focus()
    })
    required(step.element, 'h2', HTMLHeadingElement).after(button)
  }
  back.addEventListener('click', () => {
    if (from) focusStep(from)
  })
  slider.after(back)
}
