import { expect, test } from 'vitest'
import { slips } from '@/find/chances.ts'
import type { Finding, PlaceFinding } from '@/find/finding.ts'
import { answersOf } from '@/find/messages.ts'
import { type Cause, faultOfCause, type Place } from '@/find/place.ts'
import type { Query } from '@/find/query.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { faultId } from '@/mechanism/fault.ts'

const query: Query = { card: null, passes: [], slip: slips.sure, checks: [], ...usualPlace }

/** A place with one way for each cause, which share its chance alike. */
const placeOf = (place: Place, wrong: number, before: number | null, ...causes: Cause[]): PlaceFinding => ({
  place,
  wrong,
  before,
  ways: causes.map((cause) => ({ causes: [cause], probability: wrong / causes.length })),
})

const findingOf = (...places: PlaceFinding[]): Finding => ({
  places,
  oil: { fresh: 1, old: 0, set: 0 },
  wear: { mean: 0, low: 0, high: 0 },
  together: [],
  unexplained: [],
  ranked: [{ faults: null, probability: 1 }],
  isExact: true,
})

const answers = (...places: PlaceFinding[]) => answersOf(query, findingOf(...places))
const named = (...places: PlaceFinding[]): (Place | null)[] => answers(...places).map(({ place }) => place)

test('where nothing is wrong, that is the only answer, and it is certain', () => {
  expect(answers()).toEqual([
    { kind: 'sound', place: null, ways: [], probability: 1, shown: [], speaking: [] },
  ])
})

test('that nothing is wrong comes first as long as it is at least as likely as not', () => {
  const half = placeOf('strip.3', 0.5, 0.01, 'strip.3.seized')
  expect(answers(half).map(({ kind, probability }) => [kind, probability])).toEqual([
    ['sound', 0.5],
    ['faults', 0.5],
  ])
  expect(named(placeOf('strip.3', 0.51, 0.01, 'strip.3.seized'))).toEqual(['strip.3'])
  // Two of 0.3 leave 0.49.
  const two = [
    placeOf('strip.3', 0.3, 0.01, 'strip.3.seized'),
    placeOf('strip.6', 0.3, 0.01, 'strip.6.seized'),
  ]
  expect(named(...two)).toEqual(['strip.3', 'strip.6'])
  const [sound] = answers(placeOf('strip.3', 0.2, 0.01, 'strip.3.seized'), placeOf('strip.6', 0.1, 0.01))
  expect(sound?.probability).toBeCloseTo(0.8 * 0.9, 12)
})

test('a place is named where the notes have more than doubled its odds, or made it likelier than not', () => {
  // Odds of 0.2 are 1/4; half of that is a chance of 1/9.
  const at = (before: number) => named(placeOf('strip.3', 0.2, before, 'strip.3.seized'))
  expect(at(1 / 9 - 0.001)).toEqual([null, 'strip.3'])
  expect(at(1 / 9 + 0.001)).toEqual([null])
  expect(named(placeOf('strip.3', 0.51, 0.5, 'strip.3.seized'))).toEqual(['strip.3'])
  expect(named(placeOf('strip.3', 0.5, 0.45, 'strip.3.seized'))).toEqual([null])
  expect(named(placeOf('strip.3', 1, 1, 'strip.3.seized'))).toEqual(['strip.3'])
})

test('what reaches the whole bed is named from a fifth on, and nothing else without a chance before', () => {
  expect(named(placeOf('belt', 0.21, null, 'belt.off'))).toEqual([null, 'belt'])
  expect(named(placeOf('belt', 0.2, null, 'belt.off'))).toEqual([null])
  expect(named(placeOf('strip.3', 0.9, null, 'strip.3.seized'))).toEqual([null])
})

test('places under a chance of 0.02 are left out, and so is what comes after the eighth', () => {
  expect(named(placeOf('strip.3', 0.02, 0.001, 'strip.3.seized'))).toEqual([null, 'strip.3'])
  expect(named(placeOf('strip.3', 0.0199, 0.001, 'strip.3.seized'))).toEqual([null])
  const nine = Array.from({ length: 9 }, (_, n) =>
    placeOf(`column.${n + 1}`, 0.08 - n / 1000, 0.001, `pin.${n + 1}.high` as Cause),
  )
  expect(named(...nine)).toEqual([null, ...nine.slice(0, 8).map(({ place }) => place)])
})

test('an answer has its ways as faults, without those of less than a twentieth of its chance', () => {
  const place: PlaceFinding = {
    place: 'strip.3',
    wrong: 0.8,
    before: 0.01,
    ways: [
      { causes: ['strip.3.seized'], probability: 0.72 },
      { causes: ['strip.3.slow'], probability: 0.0401 },
      { causes: ['strip.3.over'], probability: 0.0399 },
    ],
  }
  const [answer] = answers(place)
  expect(answer?.ways.map((faults) => faults.map(faultId))).toEqual([['strip.3.seized'], ['strip.3.slow']])
  expect(answer?.probability).toBe(0.8)
})

test('an answer has at most sixty ways', () => {
  const causes = Array.from({ length: 61 }, (_, n): Cause => `catch.R${n + 1}.broken` as Cause)
  const [answer] = answers({
    place: 'retainer',
    wrong: 0.9,
    before: null,
    ways: [{ causes, probability: 0.9 }],
  })
  expect(answer?.ways).toEqual(causes.slice(0, 60).map((cause) => [faultOfCause(cause)]))
})

test('of what no look distinguishes the commonest comes first', () => {
  const alike = (...causes: Cause[]) =>
    answers({
      place: 'column.5',
      wrong: 0.9,
      before: 0.01,
      ways: [{ causes, probability: 0.9 }],
    })[0]?.ways.map(([fault]) => fault && faultId(fault))
  // A stuck pin is common, a broken rocker rare.
  expect(alike('rocker.5.dead', 'pin.5.low')).toEqual(['pin.5.low', 'rocker.5.dead'])
  expect(alike('pin.5.low', 'rocker.5.dead')).toEqual(['pin.5.low', 'rocker.5.dead'])
})

test('no card, and what the catalogue has no word for, are answers of their own kind', () => {
  expect(answers(placeOf('card', 0.9, null, 'card.out'))[0]).toMatchObject({ kind: 'noCard', ways: [] })
  expect(answers(placeOf('needle.R3', 0.9, 0.01, 'other'))[0]).toMatchObject({ kind: 'unknown', ways: [] })
  expect(answers(placeOf('strip.3', 0.9, 0.01))[0]).toMatchObject({ kind: 'faults', ways: [] })
})

test('each answer shows what the likeliest listed machine would, pass by pass', () => {
  const pass = { card: [0xffffff], row: 1, way: 1, speed: 500, needles: '' } as const
  const asked: Query = { ...query, card: pass.card, passes: [pass, { ...pass, way: -1 }] }
  const finding = findingOf(placeOf('strip.3', 0.9, 0.01, 'strip.3.seized'))
  const all: Finding = {
    ...finding,
    ranked: [
      { faults: [], probability: 0.1 },
      { faults: [['strip.3.seized']], probability: 0.8 },
      { faults: null, probability: 0.1 },
    ],
  }
  const [answer] = answersOf(asked, all)
  expect(answer?.shown).toHaveLength(2)
  // A row of all holes: every eighth of 200 needles stays plain.
  for (const { changed } of answer!.shown) expect(changed).toHaveLength(25)
  const [unlisted] = answersOf(asked, finding)
  expect(unlisted?.shown).toEqual([
    { changed: [], chance: 0 },
    { changed: [], chance: 0 },
  ])
})
