import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chapterOfMaker } from '@/lesson/make-question.ts'
import { makersOf, questionOf } from '@/lesson/chapters.ts'
import { mark, rightAnswer } from '@/lesson/marking.ts'
import type { Question, Verdict } from '@/lesson/question.ts'
import { read } from '@/link/read.ts'
import { write } from '@/link/write.ts'
import { check } from '../mechanism/check.ts'
import { chapters, everyMaker, library, made } from './made.ts'
import { wrongAnswers } from './wrong-answers.ts'

const seeds = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 0xffffffff }))

/** Questions made so far, by maker and seed: what is asked of one again need not make it again. */
const known = new Map<string, Question>()
const knownOr = (maker: string, seed: number): Question => {
  const name = `${maker} ${seed}`
  const question = known.get(name) ?? made(maker, seed)
  known.set(name, question)
  return question
}

/** Holds for many questions of a maker, the same ones each time. */
const always = (maker: string, holds: (question: Question) => void, runs = 15): void =>
  check(
    fc.property(seeds, (seed) => holds(knownOr(maker, seed))),
    runs,
  )

/** Every state that a question may show. */
const states = (question: Question): string[] => {
  const verdicts: Verdict[] = [mark(question, rightAnswer(question))]
  for (const answer of wrongAnswers(question)) verdicts.push(mark(question, answer))
  return [question.state, ...verdicts.map(({ show }) => show)]
}

/** One sentence: a capital or a number first, one full stop, at the end. */
const oneSentence = /^[A-Z“0-9-](?:[^.]|\.\d)*\.$/

describe.each(chapters)('chapter %i', (chapter) => {
  test('asks at least four questions of at least three kinds', () => {
    const questions = makersOf(chapter).map((maker) => made(maker, 1))
    expect(questions.length).toBeGreaterThanOrEqual(4)
    expect(new Set(questions.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(3)
    expect(questions.every(({ maker }) => chapterOfMaker(maker) === chapter)).toBe(true)
  })
})

describe.each(everyMaker)('the questions of %s', (maker) => {
  test('mark their right answer right, and say why in a sentence', () => {
    always(maker, (question) => {
      const marking = mark(question, rightAnswer(question))
      expect(marking).toMatchObject({ right: true, wrong: [] })
      expect(marking.reason).toMatch(oneSentence)
    })
  })

  test('mark every other choice wrong, with a sentence of its own', () => {
    always(maker, (question) => {
      const markings = wrongAnswers(question).map((answer) => mark(question, answer))
      expect(markings.length).toBeGreaterThan(2)
      for (const { right, reason } of markings) {
        expect(right).toBe(false)
        expect(reason).toMatch(oneSentence)
      }
      expect(new Set(markings.map(({ reason }) => reason)).size).toBe(markings.length)
    })
  })

  test('show only states that read without trouble, in their canonical form', () => {
    always(
      maker,
      (question) => {
        for (const text of states(question)) {
          const { state, troubles } = read(text, library)
          expect(troubles).toEqual([])
          expect(write(state, library)).toBe(text)
        }
      },
      10,
    )
  })

  test('are the same for the same seed', () => {
    always(
      maker,
      (question) => {
        expect(made(maker, question.seed)).toEqual(question)
      },
      5,
    )
  })

  test('differ from seed to seed', () => {
    const texts = Array.from({ length: 12 }, (_, seed) =>
      JSON.stringify({ ...knownOr(maker, seed), id: '', seed: 0 }),
    )
    expect(new Set(texts).size).toBeGreaterThan(8)
  })

  test('can be made for each of many seeds', () => {
    for (let seed = 0; seed < 40; seed++) expect(knownOr(maker, seed).prompt).toMatch(/[.?]$/)
  }, 60_000)
})

test('an unknown maker makes no question', () => {
  for (const maker of ['', '1', '11.row', '1.nothing', '1.toString', '__proto__.row'])
    expect(questionOf(maker, 1, library)).toBeNull()
})
