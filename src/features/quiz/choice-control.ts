import type { Question } from '../../lesson/question.ts'
import { at } from '../../mechanism/lookup.ts'
import type { Control } from './control.ts'
import type { Paper } from '../../drawings/shared/elements.ts'

/** Parts or checks, one of which is the answer. */
export const choiceControl = (
  paper: Paper,
  question: Question<'part' | 'check'>,
): Control<'part' | 'check'> => {
  const inputs = question.options.map(
    ({ id }) => paper.html('input', { type: 'radio', name: question.id, value: id }) as HTMLInputElement,
  )
  const labels = question.options.map(({ label, note }, n) => {
    const words = paper.html('span', {}, [label])
    if (note !== '') words.append(paper.html('span', { class: 'note' }, [note]))
    return paper.html('label', { class: 'option' }, [at(inputs, n), words])
  })
  return {
    element: paper.html('fieldset', {}, [
      paper.html('legend', { class: 'unseen' }, ['Your answer']),
      ...labels,
    ]),
    answer: () => inputs.find(({ checked }) => checked)?.value ?? null,
    missing: 'Choose one first.',
    fill: (id) => {
      for (const input of inputs) input.checked = input.value === id
    },
  }
}
