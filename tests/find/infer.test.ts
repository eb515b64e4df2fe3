import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { checkOf, type PartCheck } from '@/find/checks.ts'
import type { Entry } from '@/find/dictionary.ts'
import { hypothesesOf } from '@/find/hypotheses.ts'
import { infer } from '@/find/infer.ts'
import { nextLooks } from '@/find/next.ts'
import { slips } from '@/find/priors.ts'
import type { NotedPass, Query } from '@/find/query.ts'
import { faultOf } from '@/mechanism/fault.ts'
import { everyHole } from '@/mechanism/card.ts'
import { lettersOf } from '@/find/evidence.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { idsOf } from './ids.ts'

// R7 is needle 106, and every eighth is of its strip.
const missed = Array.from({ length: 200 }, (_, n) => (n % 8 === 2 ? 'p' : 's')).join('')
const pass: NotedPass = { card: [everyHole], row: 1, way: 1, speed: 500, needles: missed }
const query: Query = { card: [everyHole], passes: [pass], slip: slips.sure, checks: [], ...usualPlace }

/** Rows that ask for the three columns of strip 3 in several ways, for all columns, and for none. */
const ofStrip3 = [0x202020, 0x200020, 0x002000, 0x200001, 0xffffff, 0]

const total = (from: Query): number =>
  infer(from).answers.reduce((sum, { probability }) => sum + probability, 0)
/** Chance of one fault alone. */
const chanceOf = (id: string, from: Query): number => {
  const { dictionary, answers } = infer(from)
  return hypothesesOf(dictionary, answers).find(
    ({ entries }) => entries?.length === 1 && entries[0]!.id === id,
  )!.probability
}
const byChance = (from: Query): [string[], number][] =>
  infer(from).answers.map((answer) => [idsOf(answer).sort(), answer.probability])
const near = (from: Query) =>
  byChance(from).map(([ids, chance]) => [ids, expect.closeTo(chance, 12) as number])

describe('what may be wrong', () => {
  test('is found from the needles that were seen', () => {
    const finding = infer(query)
    expect(finding.dictionary.views).toEqual([
      { card: [everyHole], pass: 1, speed: 500, shift: 0, ...usualPlace },
    ])
    expect(idsOf(finding.answers[0]!)).toContain('strip.7.seized')
    expect(finding.nearest?.ways).toEqual(
      expect.arrayContaining([[expect.objectContaining({ id: 'strip.7.seized' })]]),
    )
    expect(nextLooks(query, finding).map(({ check }) => check)).toContain('strips')
  })

  test('is named by the columns of the card as they lie along the bed', () => {
    // R7 is of column 3 where R5 is of column 1, and of column 20 where R12 is.
    for (const [columnOne, strip, column] of [
      [104, 3, 3],
      [111, 4, 20],
    ] as const) {
      const elsewhere = { ...query, columnOne: toNeedle(columnOne) }
      expect(idsOf(infer(elsewhere).answers[0]!)).toContain(`strip.${strip}.seized`)
      const needles = Array.from({ length: 200 }, (_, n) => (n % 24 === 106 % 24 ? 'p' : 's')).join('')
      const [first] = infer({ ...elsewhere, passes: [{ ...pass, needles }] }).answers
      expect(idsOf(first!)).toContain(`pin.${column}.low`)
    }
  })

  test('may be two faults of one strip, wherever column 1 is', () => {
    const found = [100, 105, 123].map((columnOne) => {
      const place = { columnOne: toNeedle(columnOne) }
      const faults = ['pin.3.low', 'pin.11.high'].map(faultOf)
      const passes = [1, 2, 3, 4, 5, 6].map((row): NotedPass => ({
        card: ofStrip3,
        row,
        way: row % 2 === 1 ? 1 : -1,
        speed: row === 6 ? 900 : 500,
        needles: lettersOf(
          startRun({
            ...soundScenario(ofStrip3),
            speed: row === 6 ? 900 : 500,
            faults,
            ...place,
          }).passOf(row),
        ),
      }))
      return idsOf(infer({ ...query, card: ofStrip3, passes, ...place }).answers[0]!)
    })
    expect(found[0]).toContain('pin.11.high + pin.3.low')
    expect(found[1]).toEqual(found[0])
    expect(found[2]).toEqual(found[0])
  })

  test('adds up to 1, the likeliest first, and leaves out what is next to impossible', () => {
    const { answers } = infer(query)
    const chances = answers.map(({ probability }) => probability)
    expect(total(query)).toBeCloseTo(1, 12)
    expect(chances).toEqual([...chances].sort((one, other) => other - one))
    expect(Math.min(...chances)).toBeGreaterThan(0.99e-6)
  })

  test('has the commonest way of each answer first', () => {
    const column = missed.replaceAll('p', 's').split('')
    for (let n = 4; n < 200; n += 24) column[n] = 'p'
    const [first] = infer({ ...query, passes: [{ ...pass, needles: column.join('') }] }).answers
    expect(first!.ways.map(([entry]) => entry!.fault.kind).slice(0, 2)).toEqual(['pin.low', 'card.blocked'])
  })

  test('is nearest to the likeliest that is known, where nothing known explains it', () => {
    const odd = Array.from({ length: 200 }, (_, n) => ((n * n * 7 + n) % 11 < 5 ? 'u' : 's')).join('')
    const { answers, nearest } = infer({ ...query, passes: [{ ...pass, needles: odd }] })
    expect(answers[0]!.kind).toBe('unknown')
    expect(nearest?.kind).not.toBe('unknown')
  })
})

describe('what was found at parts', () => {
  const seized = faultOf('strip.7.seized')
  const few: Query = { ...query, passes: [{ ...pass, needles: `${'?'.repeat(106)}p${'?'.repeat(93)}` }] }

  test('makes a fault that was found likelier, and one that was not less so, by the odds of a mistake', () => {
    // R8, beside it, was selected: so it is not a fault of the whole bed.
    const beside: Query = {
      ...query,
      passes: [{ ...pass, needles: `${'?'.repeat(106)}ps${'?'.repeat(92)}` }],
    }
    const odds = (from: Query): number => chanceOf('strip.7.seized', from) / chanceOf('pin.7.low', from)
    const before = odds(beside)
    const mistake = 0.03 / 0.97
    const found = odds({ ...beside, checks: [{ check: 'strips', found: seized }] })
    expect(found / before).toBeCloseTo(1 / mistake, 6)
    expect(odds({ ...beside, checks: [{ check: 'strips', found: null }] }) / before).toBeCloseTo(mistake, 6)
    const twice = {
      ...beside,
      checks: [{ check: 'strips', found: null } as const, { check: 'cover', found: null } as const],
    }
    expect(odds(twice) / before).toBeCloseTo(mistake * mistake, 6)
    expect(total(twice)).toBeCloseTo(1, 12)
  })

  test('says nothing of the amount, and nothing where it was a pass', () => {
    const slow = (id: string): Query => ({ ...few, checks: [{ check: 'strips', found: faultOf(id) }] })
    expect(byChance(slow('strip.7.slow=100'))).toEqual(near(slow('strip.7.slow=1000')))
    expect(byChance({ ...few, checks: [{ check: 'next-row', found: null }] })).toEqual(near(few))
  })

  test('leaves what was not told apart together, and tells apart what the parts do', () => {
    const { shows } = checkOf('carriage') as PartCheck
    const most = (from: Query) =>
      infer(from).answers.reduce((best, answer) => (answer.ways.length > best.ways.length ? answer : best))
    const isUnderCarriage = (way: readonly Entry[]): boolean =>
      way.some(({ fault: { kind } }) => shows.includes(kind))
    const apart = most(few).ways.filter(isUnderCarriage).length
    expect(apart).toBeGreaterThan(0)
    const { ways } = most({ ...few, checks: [{ check: 'carriage', found: null }] })
    expect(ways).toHaveLength(most(few).ways.length - apart)
    expect(ways.some(isUnderCarriage)).toBe(false)
  })

  test('is not looked at again', () => {
    const checks = (from: Query) => nextLooks(from, infer(from)).map(({ check }) => check)
    expect(checks(few)).toContain('holes-right')
    expect(checks({ ...few, checks: [{ check: 'holes-right', found: null }] })).not.toContain('holes-right')
  })
})

describe('passes with several cards', () => {
  const other: NotedPass = { ...pass, card: [0, everyHole], row: 1, needles: 'p'.repeat(200) }

  test('follow one another where the card stays, and have holes at fault in the card in question only', () => {
    const views = infer({ ...query, passes: [other, { ...other, row: 2, way: -1 }, pass] }).dictionary.views
    expect(views.map(({ pass: number, shift }) => [number, shift])).toEqual([
      [1, null],
      [2, null],
      [1, 0],
    ])
  })
})
