import { required, setText, dataOf } from '../../browser/dom.ts'
import { type Machine, showState } from '../machine/index.ts'

/** Asks a prediction: choosing by arrow keys answers nothing; a press of the choice, Enter, Space or the button does. */
const bindPrediction = (form: HTMLFormElement, machine: Machine): void => {
  const answer = required(form, '.predict-answer', HTMLDetailsElement)
  const said = required(form, '.predict-said', HTMLElement)
  const words = required(form, '.predict-right', HTMLElement).textContent
  const chosen = (): HTMLInputElement | null => form.querySelector('input:checked')
  const forget = (): void => {
    if (form.dataset['answered'] === chosen()?.value) return
    delete form.dataset['answered']
    setText(said, '')
  }
  const show = (): void => {
    const choice = chosen()
    if (!choice) {
      setText(said, 'Choose an answer first.')
      return
    }
    if (form.dataset['answered'] === choice.value) return
    form.dataset['answered'] = choice.value
    setText(said, `${choice.value === form.dataset['right'] ? 'Yes. ' : 'No. '}${words}`)
    answer.open = true
    showState(machine, dataOf(form, 'state'))
  }
  const choose = (choice: HTMLInputElement): void => {
    choice.checked = true
    show()
  }
  form.addEventListener('change', forget)
  form.addEventListener('click', ({ target, detail }) => {
    // A move by arrow keys is a click too, with no press to count.
    const choice = target instanceof Element && detail > 0 ? target.closest('label')?.control : null
    if (choice instanceof HTMLInputElement) choose(choice)
  })
  form.addEventListener('keydown', (event) => {
    const isPress = event.key === 'Enter' || event.key === ' '
    if (!isPress || !(event.target instanceof HTMLInputElement)) return
    event.preventDefault()
    choose(event.target)
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    show()
  })
}

/** Brings a chapter's predictions to life. Answering one sets the machine to what happens and opens the answer. */
export const bindPredictions = (root: HTMLElement, machine: Machine): void => {
  for (const form of root.querySelectorAll<HTMLFormElement>('.predict')) bindPrediction(form, machine)
}
