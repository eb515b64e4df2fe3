import { required, dataOf } from '../../browser/dom.ts'
import type { FindStore } from './store.ts'

const fetchStarts = () => import('./starts.ts')

/** The pictures and the questions that one can start from. What fills in their passes is fetched when it is first asked for. */
export const bindStarts = (root: HTMLElement, store: FindStore): void => {
  const starts = required(root, '.starts', HTMLDetailsElement)
  for (const button of starts.querySelectorAll<HTMLButtonElement>('button[data-session]'))
    button.addEventListener('click', () => {
      void fetchStarts().then(({ startFromPicture }) => {
        startFromPicture(root, store, dataOf(button, 'session'))
      })
    })
  const form = required(starts, 'form', HTMLFormElement)
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    void fetchStarts().then(({ startFromQuestions }) => {
      startFromQuestions(root, store, form)
    })
  })
}
