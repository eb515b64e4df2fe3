import type { Question } from '../../lesson/question.ts'
import type { Control } from './control.ts'
import type { Paper } from '../../drawings/shared/elements.ts'

/** A number, with its unit beside it. */
export const numberControl = (paper: Paper, question: Question<'number'>): Control<'number'> => {
  const input = paper.html('input', {
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    size: '6',
    'aria-label': `Your answer${question.unit === '' ? '' : ` in ${question.unit}`}`,
  }) as HTMLInputElement
  return {
    element: paper.html('div', { class: 'number' }, [input, paper.html('span', {}, [question.unit])]),
    answer: () => {
      const text = input.value.trim().replace(',', '.').replace('−', '-')
      return /^-?\d*\.?\d+$/.test(text) ? Number(text) : null
    },
    missing: 'Write a number first.',
    fill: (value) => {
      input.value = String(value)
    },
  }
}
