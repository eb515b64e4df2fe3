import fc from 'fast-check'
import { expect, test } from 'vitest'
import { needlesIn, modulo } from '@/mechanism/bed.ts'
import { columnBit } from '@/mechanism/card.ts'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { toColumn, ofNeedle } from '@/mechanism/indices.ts'
import { type Run, startRun } from '@/mechanism/pass.ts'
import { type Pattern, patternOf } from '@/words/patterns.ts'
import { faultOf, kinds, passes, scenarios, strips } from '../mechanism/arbitraries.ts'
import { check } from '../mechanism/check.ts'
import { machine } from '../mechanism/make.ts'

/** The needles of a pass that each pattern says are wrong, by what its words say; of each place that it can have. */
const meant = (run: Run, number: number): Readonly<Record<Pattern, readonly number[][]>> => {
  const { asked } = run.passOf(number)
  const inUse = [...needlesIn(run.scenario.bed)]
  const places = (step: number, among: readonly number[]): number[][] =>
    Array.from({ length: step }, (_, place) => among.filter((needle) => modulo(needle, step) === place))
  const selected = inUse.filter((needle) => ofNeedle(asked, needle) === 'selected')
  const plain = inUse.filter((needle) => ofNeedle(asked, needle) === 'plain')
  return {
    none: [[]],
    one: inUse.map((needle) => [needle]),
    twentyFourth: places(24, inUse),
    eighth: places(8, inUse),
    all: [selected],
    unasked: [plain],
    eighthAsked: places(8, selected),
    eighthUnasked: places(8, plain),
    mixed: [],
  }
}

/** Faults of needles, more of them on one strip than elsewhere, and of a strip: what looks alike at a glance. */
const faults: fc.Arbitrary<Fault[]> = fc.oneof(
  strips.chain((strip) =>
    fc
      .subarray(
        Array.from({ length: 25 }, (_, n) => n * 8 + strip - 1),
        { minLength: 2 },
      )
      .map((some) => some.map((needle) => makeFault('needle.bent', [needle], null))),
  ),
  fc.array(fc.oneof(faultOf('strip.seized'), faultOf('strip.over'), faultOf('rocker.dead')), {
    maxLength: 2,
  }),
  fc.array(fc.constantFrom(...kinds).chain(faultOf), { maxLength: 3 }),
)

test('a pass’s pattern is named only where just those needles are wrong that the name says', () => {
  const seen = new Map<Pattern, number>()
  check(
    fc.property(scenarios({ faults }), passes, (scenario, number) => {
      const run = startRun(scenario)
      const wrong = run.passOf(number).departures.map(({ needle }) => Number(needle))
      const pattern = patternOf(run.passOf(number))
      seen.set(pattern, (seen.get(pattern) ?? 0) + 1)
      const fits = Object.entries(meant(run, number)).flatMap(([name, sets]) =>
        sets.some((set) => set.length === wrong.length && set.every((needle, n) => needle === wrong[n]))
          ? [name]
          : [],
      )
      if (pattern === 'mixed') expect(fits).toEqual([])
      else expect(fits).toContain(pattern)
    }),
    1500,
  )
  expect([...seen.keys()].sort()).toEqual(
    [
      'all',
      'eighth',
      'eighthAsked',
      'eighthUnasked',
      'mixed',
      'none',
      'one',
      'twentyFourth',
      'unasked',
    ].sort(),
  )
})

test('of a strip that misses, the words say whether the card asked for all of its needles', () => {
  const seized = (row: number): Pattern => patternOf(machine([row], ['strip.3.seized']).passOf(1))
  const columns = (...some: readonly number[]): number =>
    some.reduce((row, column) => row | columnBit(toColumn(column)), 0)
  expect(seized(columns(3, 11, 19, 4))).toBe('eighth')
  expect(seized(columns(3, 19, 4))).toBe('eighthAsked')
  expect(seized(columns(11, 4))).toBe('twentyFourth')
})
