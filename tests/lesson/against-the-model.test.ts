import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checks, isDearer } from '@/lesson/checks.ts'
import { mark, rightAnswer } from '@/lesson/marking.ts'
import type { Kind, Picture, Question } from '@/lesson/question.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { type Pass, startRun } from '@/mechanism/pass.ts'
import { check } from '../mechanism/check.ts'
import { everyMaker, library, made } from './made.ts'

const seeds = fc.integer({ min: 0, max: 0xffffffff })

const makersOfKind = (kind: Kind): string[] => everyMaker.filter((maker) => made(maker, 1).kind === kind)

const always = <K extends Kind>(maker: string, holds: (question: Question<K>) => void): void =>
  check(
    fc.property(seeds, (seed) => holds(made(maker, seed) as unknown as Question<K>)),
    15,
  )

/** The pass that a link shows, run from its text alone. */
const passOfLink = (text: string): Pass => {
  const { state } = read(text, library)
  return startRun(scenarioOf(state, library)).passOf(state.pass)
}

const speedOfLink = (text: string): number => read(text, library).state.speed

type Bed = Extract<Picture, { kind: 'bed' }>

const cameOf = (pass: Pass, { first, came }: Bed): string =>
  pass.came.slice(first, first + came.length).join()

/** The picture of the pass and the speed that a link shows. */
const pictureOf = (question: Question<'part'>, link: string): Bed | undefined => {
  const title = new RegExp(`^Pass ${passOfLink(link).pass},`)
  const beds = question.pictures.filter((picture) => picture.kind === 'bed' && title.test(picture.title))
  const speeds = beds.filter(({ title }) => title.includes(`, ${speedOfLink(link)}\u00a0mm/s`))
  return (speeds[0] ?? beds[0]) as Bed | undefined
}

describe.each(makersOfKind('needles'))('the needles of %s', (maker) => {
  test('are those that the model selects, or those that it departs at', () => {
    always<'needles'>(maker, (question) => {
      const pass = passOfLink(mark(question, rightAnswer(question)).show)
      for (const { index, right } of question.needles)
        expect(right).toBe(
          question.goal === 'selected'
            ? pass.came[index] === 'selected'
            : pass.departures.some(({ needle }) => needle === index),
        )
    })
  })

  test('show the wrongly judged needle under the presser', () => {
    always<'needles'>(maker, (question) => {
      for (const { index, show } of question.needles) expect(read(show, library).state.at).toBe(index)
    })
  })
})

describe.each(makersOfKind('part'))('the parts of %s', (maker) => {
  test('leave another bed wherever they are the wrong answer, and this one where they are the right one', () => {
    always<'part'>(maker, (question) => {
      for (const { show, right } of question.options) {
        const picture = pictureOf(question, show)
        if (picture) expect(cameOf(passOfLink(show), picture) === picture.came.join()).toBe(right)
      }
      expect(question.options.filter(({ right }) => right)).toHaveLength(1)
    })
  })

  test('are not given away by the state that the question shows', () => {
    always<'part'>(maker, (question) => {
      expect(read(question.state, library).state.faults).toEqual([])
    })
  })
})

describe.each(makersOfKind('check'))('the checks of %s', (maker) => {
  test('cost more than the right one, or leave both suspects standing', () => {
    always<'check'>(maker, (question) => {
      const check = (id: string) => checks.find((one) => one.id === id)!
      const best = check(rightAnswer(question))
      for (const { id, right, reason } of question.options) {
        if (right) continue
        if (/would tell them apart/.test(reason)) expect(isDearer(check(id), best)).toBe(true)
        else expect(reason).toMatch(/with either fault, so it settles nothing/)
      }
    })
  })
})

describe('the table of checks', () => {
  test('goes from cheap to dear, and opens the machine last', () => {
    for (const [n, check] of checks.entries())
      for (const later of checks.slice(n)) expect(isDearer(check, later)).toBe(false)
    const opens = checks.map((one) => one.opens)
    expect(opens).toEqual([...opens].sort())
    expect(checks.at(-1)?.id).toBe('reader')
  })
})
