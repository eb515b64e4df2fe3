import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleOf } from '@/find/battery.ts'
import { type Fault, indexKindsOf } from '@/mechanism/fault.ts'
import { type FaultKindName, faultKinds, type IndexKind } from '@/mechanism/fault-kinds.ts'
import { type Run, startRun } from '@/mechanism/pass.ts'
import { type Sample, sampleOf } from '@/mechanism/sample.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { siteCards } from '@/site/cards.ts'
import { sampleWords } from '@/words/case-fabric.ts'
import { check } from '../mechanism/check.ts'
import { passes, scenarios } from '../mechanism/arbitraries.ts'
import { machine } from '../mechanism/make.ts'
import { expectTrue } from './case-claims.ts'

const kinds = Object.keys(faultKinds) as FaultKindName[]

/** Wide ranges of needles in use, as indexes: the whole bed, L50–R50 and L24–R24. */
const wide = [
  [0, 199],
  [50, 149],
  [76, 123],
] as const

/** Narrow ones: R1–R40, L12–R12, L3–R3, and one needle. */
const narrow = [
  [100, 139],
  [88, 111],
  [97, 102],
  [111, 111],
] as const

/** Another place of each kind, on another strip. */
const elsewhere: Readonly<Record<IndexKind, number>> = { row: 3, column: 22, strip: 6, pass: 5, needle: 98 }

/** A kind's example, and the same fault in another place; a belt may also be out by a whole strip's step. */
const examplesOf = (kind: FaultKindName): Fault[] => {
  const example = exampleOf(kind)
  const at = indexKindsOf(kind).map((place) => elsewhere[place])
  if (at.length > 0) return [example, { ...example, at }]
  return kind === 'belt.timing' ? [example, { ...example, amount: 8 }, { ...example, amount: -8 }] : [example]
}

const holds = (run: Run, sample: Sample): void => {
  const words = sampleWords(run, sample)
  try {
    expectTrue(words, run, sample)
  } catch (error) {
    const { bed, faults } = run.scenario
    throw new Error(`${words}\n${JSON.stringify({ bed, faults })}`, { cause: error })
  }
}

describe('what is said of a fabric is so in the fabric', () => {
  test.each(siteCards.map(({ id, rows }) => [id, rows] as const))(
    'of %s, with every kind of fault and few or many needles',
    (_, card) => {
      for (const kind of kinds)
        for (const [n, fault] of examplesOf(kind).entries())
          for (const [first, last] of n === 0 ? [...wide, ...narrow] : narrow) {
            const run = startRun({ ...soundScenario(card), faults: [fault], bed: { first, last } })
            holds(run, sampleOf(run, 1))
          }
    },
    60_000,
  )

  test('with any faults at once, any wear, at any speed and later in the work', () => {
    check(
      fc.property(scenarios(), passes, (scenario, pass) => {
        const run = startRun(scenario)
        holds(run, sampleOf(run, pass))
      }),
      150,
    )
  }, 60_000)

  test('of a stuck strip, and not of a mirror, however few the needles', () => {
    for (const { rows } of siteCards)
      for (const [first, last] of [...wide, ...narrow]) {
        const run = machine(rows, ['strip.3.seized'], { bed: { first, last } })
        expect(sampleWords(run, sampleOf(run, 1))).not.toMatch(/mirror|further to/)
      }
  })
})
