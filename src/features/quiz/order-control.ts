import type { Question } from '../../lesson/question.ts'
import { at, entry } from '../../mechanism/lookup.ts'
import type { Control } from './control.ts'
import type { Paper } from '../../drawings/shared/elements.ts'

/** Steps in a list; each moves up and down by its two buttons. */
export const orderControl = (paper: Paper, question: Question<'order'>): Control<'order'> => {
  const list = paper.html('ol', { class: 'order' })
  const said = paper.html('p', { class: 'unseen', 'aria-live': 'polite' })
  let order = [...question.offered]

  const items = new Map(
    question.steps.map(({ id, label }) => {
      const move = (by: 1 | -1): HTMLButtonElement => {
        const button = paper.html('button', {
          type: 'button',
          'aria-label': `${by < 0 ? 'Earlier' : 'Later'}: ${label}`,
        }) as HTMLButtonElement
        button.append(by < 0 ? '↑' : '↓')
        button.addEventListener('click', () => {
          const from = order.indexOf(id)
          order.splice(from, 1)
          order.splice(from + by, 0, id)
          lay()
          said.textContent = `${label}: now ${from + by + 1} of ${order.length}`
          const other = button.parentElement?.querySelector<HTMLElement>('button:not(:disabled)')
          ;(button.disabled ? other : button)?.focus()
        })
        return button
      }
      const buttons = paper.html('span', { class: 'moves' }, [move(-1), move(1)])
      return [id, paper.html('li', {}, [paper.html('span', {}, [label]), buttons])]
    }),
  )
  const lay = (): void => {
    list.replaceChildren(...order.map((id) => entry(items, id)))
    for (const [n, id] of order.entries()) {
      const buttons = entry(items, id).querySelectorAll('button')
      at(buttons, 0).disabled = n === 0
      at(buttons, 1).disabled = n === order.length - 1
    }
  }
  lay()
  return {
    element: paper.html('div', {}, [list, said]),
    answer: () => [...order],
    missing: '',
    fill: (right) => {
      order = [...right]
      lay()
    },
  }
}
