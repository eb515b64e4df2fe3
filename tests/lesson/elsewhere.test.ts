import { describe, expect, test } from 'vitest'
import { questionOf } from '@/lesson/chapters.ts'
import { mark, rightAnswer } from '@/lesson/marking.ts'
import type { Question } from '@/lesson/question.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { columnOfNeedle, needleIndex, type CardPlace } from '@/mechanism/bed.ts'
import { startRun } from '@/mechanism/pass.ts'
import { everyMaker, library } from './made.ts'
import { wrongAnswers } from './wrong-answers.ts'

const places: readonly CardPlace[] = ['R2', 'R13', 'R24'].map((name) => ({ columnOne: needleIndex(name)! }))

/** Some of a maker's questions for beds with column 1 at other needles than R1. */
const elsewhere = (maker: string): { question: Question; place: CardPlace }[] =>
  places.flatMap((place) =>
    [1, 2, 3, 4].map((seed) => ({ question: questionOf(maker, seed, library, place)!, place })),
  )

/** The needles that the model selects, or brings out otherwise than asked, in the state that shows the right answer. */
const byModel = (question: Extract<Question, { kind: 'needles' }>): number[] => {
  const { state } = read(question.right.show, library)
  const pass = startRun(scenarioOf(state, library)).passOf(state.pass)
  const wrong = pass.departures.map(({ needle }) => Number(needle))
  return question.needles
    .map(({ index }) => index)
    .filter((index) => (question.goal === 'wrong' ? wrong.includes(index) : pass.came[index] === 'selected'))
}

describe.each(everyMaker)('the questions of %s, with column 1 elsewhere', (maker) => {
  test('name needles of column 1 as such, and show machines with it there', () => {
    for (const { question, place } of elsewhere(maker)) {
      const { columnOne } = place
      for (const [, name] of question.prompt.matchAll(/([LR]\d+) is column 1\b/g))
        expect(columnOfNeedle(needleIndex(name!)!, place), question.prompt).toBe(1)
      const shown = [rightAnswer(question), ...wrongAnswers(question)].map((answer) => mark(question, answer))
      for (const text of [question.state, ...shown.map(({ show }) => show)])
        expect(read(text, library).state.columnOne).toBe(columnOne)
    }
  })

  test('are answered by the model, and mark no wrong answer right', () => {
    for (const { question } of elsewhere(maker)) {
      expect(mark(question, rightAnswer(question)).right).toBe(true)
      for (const answer of wrongAnswers(question)) expect(mark(question, answer).right).toBe(false)
      if (question.kind === 'needles')
        expect(question.needles.filter(({ right }) => right).map(({ index }) => index)).toEqual(
          byModel(question),
        )
    }
  })
})
