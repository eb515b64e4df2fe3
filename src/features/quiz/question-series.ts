import type { Question } from '../../lesson/question.ts'
import type { Paper } from '../../drawings/shared/elements.ts'
import { questionForm, type FormEvents } from './question-form.ts'

/** Questions that are asked one after the other; `n` is a question's index, from 0. */
export interface QuestionSeries {
  readonly length: number
  readonly firstSeed: (n: number) => number
  readonly question: (n: number, seed: number) => Question | null
  readonly show: FormEvents['show']
  readonly answered: (n: number, right: boolean) => void
}

/** Asks a series' questions in `root`, one at a time. */
export const startSeries = (root: HTMLElement, paper: Paper, series: QuestionSeries): void => {
  const seeds = new Map<number, number>()

  const ask = (n: number, isByHand: boolean): void => {
    const seed = seeds.get(n) ?? series.firstSeed(n)
    seeds.set(n, seed)
    const question = series.question(n, seed)
    if (!question) return
    const heading = paper.html('h3', { tabindex: '-1' }, [`Question ${n + 1} of ${series.length}`])
    const button = (words: string, act: () => void): HTMLElement => {
      const made = paper.html('button', { type: 'button' }, [words])
      made.addEventListener('click', act)
      return made
    }
    const another = button('Another like it', () => {
      seeds.set(n, seed + 1)
      ask(n, true)
    })
    const isLast = n === series.length - 1
    const next = button(isLast ? 'Back to the first' : 'Next question', () => {
      ask(isLast ? 0 : n + 1, true)
    })
    const events: FormEvents = {
      show: series.show,
      marked: (right) => {
        series.answered(n, right)
      },
    }
    const onwards = series.length > 1 ? [another, next] : [another]
    root.replaceChildren(heading, questionForm(paper, question, events, onwards))
    if (isByHand) heading.focus()
  }
  ask(0, false)
}
