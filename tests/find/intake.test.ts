import { describe, expect, test } from 'vitest'
import { infer } from '@/find/infer.ts'
import {
  type IntakeAnswer,
  intakeAnswers,
  intakeFactors,
  isIntakeAnswer,
  questionOf,
  settledAnswers,
} from '@/find/intake.ts'
import type { Place } from '@/find/place.ts'
import type { Query } from '@/find/query.ts'
import { effectWords, intakeQuestions } from '@/words/intake.ts'
import { usualPlace } from '@/mechanism/bed.ts'

/** Nothing but what was answered: a pass of which no needle was looked at. */
const knowing = (...intake: IntakeAnswer[]): Query => ({
  card: [0xffffff],
  passes: [{ card: [0xffffff], row: 1, way: 1, speed: 500, needles: '?'.repeat(200) }],
  slip: 0.005,
  checks: [],
  intake,
  ...usualPlace,
})

const wrong = (query: Query, place: Place): number =>
  infer(query).places.find((one) => one.place === place)?.wrong ?? 0
const odds = (chance: number): number => chance / (1 - chance)

describe('what an owner answered', { timeout: 300_000 }, () => {
  test('changes the oil by the factors of the table, beside one another', () => {
    const before = infer(knowing()).oil
    const { oil } = infer(knowing('stood.yes'))
    const whole = 0.4 * before.fresh + 1.5 * before.old + 2.5 * before.set
    expect(oil.fresh).toBeCloseTo((0.4 * before.fresh) / whole, 3)
    expect(oil.set).toBeCloseTo((2.5 * before.set) / whole, 3)
  })

  test('changes wear, the bar and what reaches the whole bed', () => {
    expect(infer(knowing('came.slowly')).wear.mean).toBeGreaterThan(1.3 * infer(knowing()).wear.mean)
    expect(infer(knowing('came.suddenly')).wear.mean).toBeLessThan(infer(knowing()).wear.mean)
    const bar = (...answers: IntakeAnswer[]) => odds(wrong(knowing(...answers), 'retainer'))
    // By the oil the odds differ, so that the factor of them all is near three.
    expect(bar('plain.badly') / bar()).toBeCloseTo(3, 0)
  })

  test('changes each cause that reaches the whole bed, and no other', () => {
    const { cause } = intakeFactors(['came.suddenly', 'opened.yes'])
    expect([cause('carriage.plain'), cause('card.out'), cause('pawl.left')]).toEqual([3, 3, 3])
    expect([cause('belt.off'), cause('belt.timing=8'), cause('card.skew=0.12')]).toEqual([15, 15, 9])
    for (const own of [
      'strip.3.seized',
      'pin.3.low',
      'needle.R3.bent',
      'retainer.worn=8',
      'pivots.loose=0.4',
      'other',
    ] as const)
      expect(cause(own), own).toBe(1)
    const badly = intakeFactors(['plain.badly'])
    expect([badly.cause('needle.R3.gone'), badly.cause('catch.L3.broken')]).toEqual([3, 3])
    expect(intakeFactors(['settings.confirmed']).cause('card.locked')).toBe(0.1)
  })

  test('moves a setting down where it was confirmed, and the belt up where the machine was moved', () => {
    const dark: Query = { ...knowing(), passes: [{ ...knowing().passes[0]!, needles: 'p'.repeat(200) }] }
    const seen = (place: Place, ...intake: IntakeAnswer[]) => wrong({ ...dark, intake }, place)
    expect(seen('carriage', 'settings.confirmed')).toBeLessThan(seen('carriage') / 2)
    expect(seen('belt', 'opened.yes')).toBeGreaterThan(1.5 * seen('belt'))
  })

  test('is one answer a question, in the order of the questions', () => {
    expect(settledAnswers(['opened.yes', 'stood.no', 'stood.yes'])).toEqual(['stood.yes', 'opened.yes'])
    expect(intakeFactors(['stood.no', 'stood.yes']).oil.set).toBe(2.5)
    expect([isIntakeAnswer('stood.yes'), isIntakeAnswer('stood'), isIntakeAnswer('toString')]).toEqual([
      true,
      false,
      false,
    ])
  })

  test('can be given for each answer on the page, which says what it changes', () => {
    const asked = intakeQuestions.flatMap(({ id, answers }) =>
      answers.map(({ value }) => [id, value] as const),
    )
    expect(asked.map(([, value]) => value).sort()).toEqual([...intakeAnswers].sort())
    for (const [id, value] of asked) expect(questionOf(value)).toBe(id)
    expect(effectWords('stood.yes')).toBe(
      'Before anything is seen it counts: fresh oil ×\u00a00.4, old oil ×\u00a01.5, set oil ×\u00a02.5.',
    )
    expect(effectWords('came.suddenly')).toContain('wear from 0.6 on ×\u00a00.3')
    expect(effectWords('opened.yes')).toMatch(/belt.* ×\u00a05, .* ×\u00a03\.$/)
  })
})
