import type { Question } from '../../lesson/question.ts'
import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { at } from '../../mechanism/lookup.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Control } from './control.ts'
import type { Paper } from '../../drawings/shared/elements.ts'
import { inEights, needlePicture, needleSpan } from '../../drawings/question/pictures.ts'

/** How far each key goes along the needles: a row of eight up and down. */
const keys: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -dimensions.strips,
  ArrowDown: dimensions.strips,
  Home: -Infinity,
  End: Infinity,
}

/** Needles of the bed, chosen by touch, or by arrow keys and Space; only one of them is a stop for Tab. */
export const needlesControl = (paper: Paper, question: Question<'needles'>): Control<'needles'> => {
  const { needles, goal } = question
  const chosenMark = goal === 'selected' ? 'selected' : 'missed'
  const chosen = new Set<number>()
  const buttons = needles.map(({ index }) =>
    paper.html('button', { type: 'button', class: 'needle-button', 'data-needle': String(index) }),
  )
  let stop = 0

  const draw = (differs: readonly number[] = []): void => {
    for (const [n, button] of buttons.entries()) {
      const { index } = at(needles, n)
      const isChosen = chosen.has(index)
      const isOff = differs.includes(index)
      button.setAttribute('aria-pressed', String(isChosen))
      button.setAttribute('aria-label', `${needleName(toNeedle(index))}${isOff ? ', not so' : ''}`)
      button.tabIndex = n === stop ? 0 : -1
      button.toggleAttribute('data-differs', isOff)
      button.replaceChildren(needlePicture(paper, isChosen ? chosenMark : 'plain'))
    }
  }
  const element = paper.html(
    'div',
    {
      class: 'eights needles-choice',
      role: 'group',
      'aria-label': 'Needles: arrow keys go along them, Space chooses',
    },
    inEights(paper, buttons, needleSpan(at(needles, 0).index)),
  )
  element.addEventListener('click', (event) => {
    const button = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-needle]') : null
    if (!button) return
    const index = Number(button.dataset['needle'])
    if (!chosen.delete(index)) chosen.add(index)
    stop = buttons.indexOf(button)
    draw()
  })
  element.addEventListener('keydown', (event) => {
    const by = keys[event.key]
    if (by === undefined || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    const to = Math.min(buttons.length - 1, Math.max(0, stop + by))
    // Up from the first eight and down from the last stay where they are.
    if (Math.abs(by) !== dimensions.strips || (to - stop) % dimensions.strips === 0) stop = to
    draw()
    buttons[stop]?.focus()
  })
  draw()
  return {
    element,
    answer: () => [...chosen].sort((a, b) => a - b),
    missing: '',
    fill: (right) => {
      chosen.clear()
      for (const index of right) chosen.add(index)
      draw()
    },
    marked: ({ wrong }) => {
      draw(wrong)
    },
  }
}
