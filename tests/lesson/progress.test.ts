import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  due,
  noProgress,
  type Progress,
  parseProgress,
  progressFile,
  timesAnswered,
  withAnswer,
  withStep,
} from '@/lesson/progress.ts'
import { answeredOn, daysOfBox, isDue, unasked } from '@/lesson/spacing.ts'
import { check } from '../mechanism/check.ts'
import { everyMaker } from './made.ts'

const day = 20_500

/** Progress as a reader makes it. */
const made: fc.Arbitrary<Progress> = fc
  .array(
    fc.oneof(
      fc.record({ chapter: fc.integer({ min: 1, max: 10 }), step: fc.string({ maxLength: 12 }) }),
      fc.record({
        maker: fc.constantFrom(...everyMaker),
        right: fc.boolean(),
        on: fc.integer({ min: day, max: day + 90 }),
      }),
    ),
    { maxLength: 40 },
  )
  .map((doings) =>
    doings.reduce<Progress>(
      (progress, doing) =>
        'step' in doing
          ? withStep(progress, doing.chapter, doing.step)
          : withAnswer(progress, doing.maker, doing.right, doing.on),
      noProgress,
    ),
  )

/** Progress from JSON. */
const parsed = (text: string): Progress => parseProgress(JSON.parse(text) as object)

describe('what was kept', () => {
  test('comes back as it was, from the file that a reader saves too', () => {
    check(
      fc.property(made, (progress) => {
        expect(parsed(progressFile(progress))).toEqual(progress)
        expect(JSON.parse(progressFile(progress))).toMatchObject({ version: 2 })
      }),
    )
  })

  test('is nothing where there are no steps and no answers', () => {
    expect(parseProgress({})).toEqual(noProgress)
    expect(parseProgress({ steps: null, answers: [1] })).toEqual(noProgress)
  })

  test('never throws, whatever is there', () => {
    check(
      fc.property(fc.jsonValue(), fc.jsonValue(), (steps, answers) => {
        expect(Object.keys(parseProgress({ steps, answers }))).toEqual(['steps', 'answers'])
      }),
    )
  })

  test('of whatever shape goes on as a sound one, however large and in whatever markup', () => {
    const odd = fc.oneof(fc.jsonValue(), fc.constantFrom(-1, 0.5, 1e9, 1e308, '<img src=x>'))
    const key = fc.oneof(fc.constantFrom('3', '3.pin', 'right', 'wrong', '__proto__', '<b>'), fc.string())
    const part = fc.dictionary(key, fc.oneof(odd, fc.array(odd), fc.dictionary(key, odd)))
    check(
      fc.property(fc.oneof(part, odd), fc.oneof(part, odd), (steps, answers) => {
        const progress = parsed(JSON.stringify({ steps, answers }))
        const after = withAnswer(withStep(progress, 3, 'edge'), '3.pin', true, day)
        expect(timesAnswered(after, '3.pin')).toBe(timesAnswered(progress, '3.pin') + 1)
        expect(after.steps[3]).toContain('edge')
        expect(parsed(JSON.stringify(after))).toEqual(after)
        expect(due(after, day).every((maker) => /^\d+\.[a-z]+$/.test(maker))).toBe(true)
      }),
    )
  })

  test('keeps what fits of a store that is damaged', () => {
    const kept = {
      steps: { 3: ['heights', 7, 'heights'], four: ['x'], 5: 'edge' },
      answers: {
        '3.pin': { right: 1, wrong: 0, box: 99, due: day },
        '3.bite': { right: -1, wrong: 0, box: 1, due: day },
        'Chapter 3': { right: 1, wrong: 0, box: 1, due: day },
        '4.belt': null,
      },
    }
    expect(parseProgress(kept)).toEqual({
      steps: { 3: ['heights'] },
      answers: { '3.pin': { right: 1, wrong: 0, box: daysOfBox.length - 1, due: day } },
    })
  })

  test('is not led astray by names that every object has', () => {
    const text = '{"version":2,"steps":{"__proto__":["x"]},"answers":{"__proto__":{"right":1,"wrong":1}}}'
    expect(parsed(text)).toEqual(noProgress)
  })

  // The text of the first version, as it was in browsers: it stays readable for good.
  test('takes over version 1, which had no boxes: what was answered is due', () => {
    const text = '{"version":1,"steps":{"1":["hole","pin"]},"answers":{"1.row":{"right":2,"wrong":1}}}'
    const progress = parsed(text)
    expect(progress).toEqual({
      steps: { 1: ['hole', 'pin'] },
      answers: { '1.row': { right: 2, wrong: 1, box: 0, due: 0 } },
    })
    expect(due(progress, day)).toEqual(['1.row'])
  })

  test('keeps what it knows of a later version', () => {
    const text =
      '{"version":9,"name":"x","steps":{"2":["loop"]},"answers":{"2.turn":{"right":1,"wrong":0,"box":1,"due":20501,"pace":3}}}'
    expect(parsed(text)).toEqual({
      steps: { 2: ['loop'] },
      answers: { '2.turn': { right: 1, wrong: 0, box: 1, due: 20501 } },
    })
  })
})

describe('what a reader does', () => {
  test('counts a step once', () => {
    const once = withStep(noProgress, 3, 'edge')
    expect(once.steps).toEqual({ 3: ['edge'] })
    expect(withStep(once, 3, 'edge')).toBe(once)
  })

  test('counts answers, right and wrong', () => {
    const progress = withAnswer(withAnswer(noProgress, '3.pin', true, day), '3.pin', false, day)
    expect(timesAnswered(progress, '3.pin')).toBe(2)
    expect(timesAnswered(progress, '3.bite')).toBe(0)
    expect(progress.answers['3.pin']).toMatchObject({ right: 1, wrong: 1 })
  })
})

describe('spacing', () => {
  test('brings a wrong answer back on the same day, a right one later each time', () => {
    let answered = answeredOn(unasked, false, day)
    expect(isDue(answered, day)).toBe(true)
    const waits: number[] = []
    for (let n = 0; n < 7; n++) {
      answered = answeredOn(answered, true, day)
      waits.push(answered.due - day)
    }
    expect(waits).toEqual([1, 3, 7, 16, 35, 35, 35])
    expect(answeredOn(answered, false, day)).toMatchObject({ box: 0, due: day })
  })

  test('brings a question on its day and on every later one, and not before', () => {
    const answered = answeredOn(unasked, true, day)
    expect([day, day + 1, day + 2].map((one) => isDue(answered, one))).toEqual([false, true, true])
  })

  test('asks the longest due first', () => {
    let progress = withAnswer(noProgress, '2.turn', true, day)
    progress = withAnswer(progress, '1.row', false, day)
    progress = withAnswer(progress, '1.part', true, day - 5)
    expect(due(progress, day)).toEqual(['1.part', '1.row'])
    expect(due(progress, day + 1)).toEqual(['1.part', '1.row', '2.turn'])
  })

  test('does not lose a question to a clock that was once far ahead', () => {
    const progress = withAnswer(noProgress, '2.turn', true, day + 4000)
    expect(due(progress, day)).toEqual(['2.turn'])
  })
})
