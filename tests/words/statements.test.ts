import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { needleName } from '@/mechanism/bed.ts'
import { frameAt, sinceLetGo } from '@/mechanism/frame.ts'
import { allNeedles, type Needle, needlesBetween, ofNeedle } from '@/mechanism/indices.ts'
import { type Pass, type Run, startRun } from '@/mechanism/pass.ts'
import { describeBed } from '@/words/figures/bed.ts'
import { describePlace } from '@/words/figures/place.ts'
import { describeFrame } from '@/words/frame-description.ts'
import { knittedWords } from '@/words/knitted-rows.ts'
import { needlesListed } from '@/words/lists.ts'
import { comparisonWords } from '@/words/machine-comparison.ts'
import { passes, scenarios } from '../mechanism/arbitraries.ts'
import { check } from '../mechanism/check.ts'

const runs = scenarios().map(startRun)

/** That a list of needles in words means these needles and no others: all by name, or how many with ends and step. */
const expectListed = (words: string, needles: readonly Needle[]): void => {
  const names = words.match(/[LR]\d+/g) ?? []
  const many = /(\d+) needles from/.exec(words)
  if (!many) {
    expect(names).toEqual(needles.map(needleName))
    return
  }
  expect(Number(many[1])).toBe(needles.length)
  expect(names).toEqual(
    [needles[0], needles.at(-1)].map((needle) => needle !== undefined && needleName(needle)),
  )
  const steps = new Set(needles.slice(1).map((needle, n) => needle - (needles[n] ?? NaN)))
  const step = /one after the other/.test(words) ? 1 : /, every/.test(words) ? 2 : 0
  expect(steps.size === 1).toBe(step > 0)
  if (step === 1) expect(steps).toEqual(new Set([1]))
  const named = /, every (\d+)th/.exec(words)
  if (named) expect(steps).toEqual(new Set([Number(named[1])]))
  for (const [ordinal, size] of [
    ['second', 2],
    ['eighth', 8],
    ['sixteenth', 16],
    ['twenty-fourth', 24],
  ] as const)
    if (words.includes(`every ${ordinal}`)) expect(steps).toEqual(new Set([size]))
}

const inUse = ({ condition }: Run): readonly Needle[] =>
  needlesBetween(condition.bed.first, condition.bed.last)

const cameAs = (run: Run, { came }: Pass, outcome: string): Needle[] =>
  inUse(run).filter((needle) => ofNeedle(came, needle) === outcome)

describe('what is said of needles holds of the model', () => {
  test('in a list of any needles', () => {
    const needles = fc.oneof(
      fc.subarray([...allNeedles], { minLength: 1, maxLength: 12 }),
      fc
        .tuple(
          fc.integer({ min: 0, max: 40 }),
          fc.constantFrom(1, 2, 3, 8, 16, 24),
          fc.integer({ min: 1, max: 6 }),
        )
        .map(([first, step, count]) =>
          allNeedles.filter((n) => n >= first && n < first + step * count && (n - first) % step === 0),
        ),
    )
    check(
      fc.property(needles, (some) => {
        expectListed(needlesListed(some), some)
      }),
      150,
    )
  })

  test('of the bed, in numbers', () => {
    check(
      fc.property(runs, passes, (run, number) => {
        const pass = run.passOf(number)
        const [, selected, plain] =
          /: (\d+) needles? selected, (\d+) plain; /.exec(describeBed(pass, run.condition.bed)) ?? []
        expect([selected, plain].map(Number)).toEqual(
          ['selected', 'plain'].map((outcome) => cameAs(run, pass, outcome).length),
        )
      }),
      60,
    )
  })

  test('of two machines that differ', () => {
    check(
      fc.property(runs, passes, (run, number) => {
        const above = run.passOf(number)
        const below = startRun({ ...run.scenario, faults: [], wear: 0 }).passOf(number)
        const words = comparisonWords(above, below)
        const differ = inUse(run).filter(
          (needle) => ofNeedle(above.came, needle) !== ofNeedle(below.came, needle),
        )
        expect(words.includes('the same needles')).toBe(differ.length === 0)
        if (differ.length > 0) expectListed(words, differ)
      }),
      60,
    )
  })

  test('of rows that are knitted', () => {
    const rows = fc.array(
      fc.record({
        pass: passes,
        wrong: fc.subarray(allNeedles.slice(90, 110), { maxLength: 4 }),
        floats: fc.constant([]),
      }),
      { maxLength: 4 },
    )
    check(
      fc.property(rows, (some) => {
        const words = knittedWords(some)
        const wrong = some.flatMap((row) => row.wrong)
        const needles = [...new Set(wrong)].sort((a, b) => a - b)
        expect(words.includes('Every stitch is as the card asks')).toBe(some.length > 0 && wrong.length === 0)
        if (wrong.length === 0) return
        expect(words).toMatch(new RegExp(`^${some.length} rows? (is|are) knitted\\. ${wrong.length} stitch`))
        expectListed(words.replace(/^.*, on /, ''), needles)
      }),
      100,
    )
  })

  test('at any place of the carriage: what is sorted, and what came out wrong so far', () => {
    check(
      fc.property(runs, passes, fc.double({ min: -12, max: 211, noNaN: true }), (run, number, x) => {
        const frame = frameAt(run, number, x)
        const { pass } = frame
        const sorted = inUse(run).filter(
          (n) => sinceLetGo(frame.x, n, pass.way) >= frame.condition.dimensions.gateLag,
        )
        const place = describePlace(frame)
        const counts =
          /Behind it (\d+) needles? stands? forward and (\d+) back(?:, (\d+) still to come)?/.exec(place)
        const of = (outcome: string): number =>
          sorted.filter((n) => ofNeedle(pass.came, n) === outcome).length
        if (counts)
          expect((counts.slice(1) as (string | undefined)[]).map((count = '0') => Number(count))).toEqual([
            of('selected'),
            of('plain'),
            inUse(run).length - sorted.length,
          ])
        else if (!run.condition.carriagePlain) expect([of('selected'), of('plain')]).toEqual([0, 0])
        const isOnLine = place.includes('no needle leaves the line')
        expect(isOnLine).toBe(run.condition.carriagePlain)
        if (isOnLine) expect([...frame.needleTravels].filter((travel) => travel !== 0)).toEqual([])
        const words = describeFrame(frame)
        expect(words).not.toMatch(/undefined|NaN|null| {2}|\.\./)
        for (const [lead, came] of [
          ['Missed so far: ', 'plain'],
          ['Selected without being asked so far: ', 'selected'],
          ['Not moved so far: ', 'unmoved'],
        ] as const) {
          const said = words.split(lead)[1]?.replace(/, (all )?because of .*$/, '')
          const needles = frame.departures.filter((one) => one.came === came).map(({ needle }) => needle)
          if (said !== undefined) expectListed(said, needles)
        }
      }),
      60,
    )
  })
})
