import { describe, expect, test } from 'vitest'
import { beforeOf, isSpokenOf } from '@/commands/bench/before.ts'
import { machinesOf } from '@/commands/bench/machine.ts'
import { calibrationOf, isMet, type Measure, measuresOf, type Tried } from '@/commands/bench/measures.ts'
import type { Finding, PlaceFinding } from '@/find/finding.ts'
import type { Place } from '@/find/place.ts'

const place = (name: Place, wrong: number, before: number | null = 0.01): PlaceFinding => ({
  place: name,
  wrong,
  before,
  ways: [],
})

const nothing: Finding = {
  places: [],
  oil: { fresh: 0.5, old: 0.3, set: 0.2 },
  wear: { mean: 0.1, low: 0, high: 0.3 },
  together: [],
  unexplained: [],
  ranked: [],
  isExact: true,
}

const [machine] = machinesOf(1, 1)

const tried = (truth: readonly (readonly [Place, number])[], finding: Partial<Finding>, wear = 0): Tried => ({
  machine: { ...machine!, wear },
  truth: new Map(truth),
  finding: { ...nothing, ...finding },
})

const measured = (those: readonly Tried[], name: string): Measure => {
  const found = measuresOf(those).find((measure) => measure.name === name)
  if (!found) throw new Error(`there is no measure “${name}”`)
  return found
}

describe('places that are wrong and show', () => {
  const name = 'wrong and showing: given over 0.5'
  const inSet = 'the same, or in a set of few'
  const truth = [
    ['strip.1', 80],
    ['column.9', 3],
    ['column.2', 2],
  ] as const

  test('are those whose mending would change three notes', () => {
    expect(measured([tried(truth, {})], name)).toMatchObject({ tried: 2, value: 0 })
    const both = { places: [place('strip.1', 0.99), place('column.9', 0.51)] }
    expect(measured([tried(truth, both)], name)).toMatchObject({ tried: 2, value: 1 })
    const one = { places: [place('strip.1', 0.99), place('column.9', 0.5), place('column.2', 0.9)] }
    expect(measured([tried(truth, one)], name)).toMatchObject({ tried: 2, value: 0.5 })
  })

  test.each([
    [['strip.1', 'column.9'], 0.91, 1],
    [['strip.1', 'column.9'], 0.9, 0.5],
    [['strip.1', 'column.1'], 0.99, 0.5],
    [['column.9', 'card', 'belt', 'sweep', 'gate', 'turn'], 0.99, 1],
    [['column.9', 'card', 'belt', 'sweep', 'gate', 'turn', 'carriage'], 0.99, 0.5],
  ] as const)('count as named in a set of at most six with more than 0.9: %j, %d', (places, wrong, value) => {
    const finding = { places: [place('strip.1', 0.99)], together: [{ places: [...places], wrong }] }
    expect(measured([tried(truth, finding)], inSet)).toMatchObject({ tried: 2, value })
  })
})

test('what is given a high chance is right as often as it is truly wrong, whether or not it shows', () => {
  const one = tried([['strip.1', 0]], { places: [place('strip.1', 0.999), place('column.4', 0.95)] })
  const other = tried([], { places: [place('strip.2', 0.6), place('belt', 0.5, null)] })
  expect(measured([one, other], 'given over 0.5: truly wrong')).toMatchObject({ tried: 3, value: 1 / 3 })
  expect(measured([one, other], 'given over 0.9: truly wrong')).toMatchObject({ tried: 2, value: 0.5 })
  expect(measured([one, other], 'given over 0.99: truly wrong')).toMatchObject({ tried: 1, value: 1 })
})

describe('calibration', () => {
  const many = (count: number, given: number, isSo: (n: number) => boolean, before: number | null = 0.01) =>
    Array.from({ length: count }, (_, n) =>
      tried(isSo(n) ? [['strip.1', 9]] : [], { places: [place('strip.1', given, before)] }),
    )

  test('holds each tenth of the chances given against how often they were so', () => {
    const bins = calibrationOf([...many(150, 0.25, (n) => n % 4 === 0), ...many(120, 1, (n) => n > 11)])
    expect(bins.map(({ places }) => places)).toEqual([0, 0, 150, 0, 0, 0, 0, 0, 0, 120])
    expect(bins[2]).toMatchObject({
      given: expect.closeTo(0.25) as number,
      isSo: expect.closeTo(0.25, 1) as number,
    })
    expect(bins[9]!.isSo).toBeCloseTo(0.9)
  })

  test('is as bad as its worst bin of more than 100 places', () => {
    const name = 'calibration: the worst bin'
    const those = [...many(101, 0.95, (n) => n < 80), ...many(100, 0.35, () => true)]
    expect(measured(those, name).value).toBeCloseTo(0.95 - 80 / 101)
    expect(isMet(measured(those, name))).toBe(false)
    expect(
      isMet(
        measured(
          many(101, 0.95, (n) => n < 96),
          name,
        ),
      ),
    ).toBe(true)
  })

  test('leaves out places of which the notes do not speak', () => {
    expect(calibrationOf(many(200, 0.3, () => false, 0.25)).every(({ places }) => places === 0)).toBe(true)
  })

  test.each([
    ['carriage', 0.02],
    ['pivots', 0.1],
    ['retainer', 0.5 * 0.1 + 0.3 * 0.18 + 0.2 * 0.22],
    ['presser', 0.012],
    ['sweep', 0.002],
  ] as const)('knows how likely a part that reaches the whole bed was before: %s', (name, before) => {
    expect(beforeOf(place(name, 0.5, null), nothing)).toBeCloseTo(before, 12)
    expect(isSpokenOf(place(name, before, null), nothing)).toBe(false)
    expect(isSpokenOf(place(name, 0.9, null), nothing)).toBe(true)
  })
})

describe('wear', () => {
  const said = (mean: number, low = mean, high = mean) => ({ wear: { mean, low, high } })

  test('is as far out as its mean is, on worn machines and where much is said', () => {
    const those = [tried([], said(0.7), 0.8), tried([], said(0.9), 0.85), tried([], said(0.1), 0.7)]
    expect(measured(those, 'error of wear, where it is 0.8 or more')).toMatchObject({
      tried: 2,
      value: expect.closeTo(0.075) as number,
    })
    expect(
      measured([...those, tried([], said(0.6), 0)], 'error of wear, where 0.6 or more is said'),
    ).toMatchObject({ tried: 3, value: expect.closeTo(0.25) as number })
  })

  test('lies within its interval, ends included', () => {
    const those = [
      tried([], said(0.7, 0.6, 0.8), 0.6),
      tried([], said(0.7, 0.6, 0.8), 0.81),
      tried([], said(0), 0.5),
    ]
    expect(measured(those, 'wear from 0.6 up within its interval')).toMatchObject({ tried: 2, value: 0.5 })
  })

  test('calls no sound part broken, but may call a broken one so', () => {
    const name = 'worn, and a sound part called broken'
    const finding = { places: [place('strip.1', 0.6)] }
    expect(measured([tried([['strip.1', 0]], finding, 0.8), tried([], finding, 0.79)], name)).toMatchObject({
      tried: 1,
      value: 0,
    })
    expect(measured([tried([], finding, 0.8), tried([], {}, 0.9)], name)).toMatchObject({
      tried: 2,
      value: 0.5,
    })
  })
})

test('an aim is met on its bound, within a slack, and where there was nothing to try', () => {
  const measure = (value: number, is: 'at least' | 'at most', many = 9): Measure => ({
    name: '',
    tried: many,
    value,
    aim: { is, bound: 0.9 },
  })
  expect([0.9, 0.89].map((value) => isMet(measure(value, 'at least')))).toEqual([true, false])
  expect([0.9, 0.91].map((value) => isMet(measure(value, 'at most')))).toEqual([true, false])
  expect([0.86, 0.84].map((value) => isMet(measure(value, 'at least'), 0.05))).toEqual([true, false])
  expect(isMet(measure(NaN, 'at least', 0))).toBe(true)
})
