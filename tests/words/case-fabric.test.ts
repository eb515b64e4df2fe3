import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exampleOf } from '@/find/battery.ts'
import type { Bed } from '@/mechanism/bed.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type FaultKindName, faultKinds } from '@/mechanism/fault-kinds.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { type Run, startRun } from '@/mechanism/pass.ts'
import { type Sample, sampleOf } from '@/mechanism/sample.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { siteCards } from '@/site/cards.ts'
import { sampleWords } from '@/words/case-fabric.ts'
import { check } from '../mechanism/check.ts'
import { passes, scenarios } from '../mechanism/arbitraries.ts'
import { machine } from '../mechanism/make.ts'
import { expectTrue } from './case-claims.ts'

const bedOf = (first: number, last: number): Bed => ({ first: toNeedle(first), last: toNeedle(last) })

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

/** A fault of a kind on another strip than its example, by its id; null for a kind that has no places. */
const elsewhere = (kind: FaultKindName): Fault | null => {
  const { pattern, amount } = faultKinds[kind]
  const places = { ROW: 3, COL: 22, C: 22, J: 6, P: 5, NEEDLE: 'L2' } as const
  const id = pattern.replace(/\b(ROW|COL|NEEDLE|[CJP])\b/g, (place) =>
    String(places[place as keyof typeof places]),
  )
  return id === pattern ? null : faultOf(amount ? `${id}=${amount.usual}` : id)
}

/** A kind's example, and the same fault in another place; a belt may also be out by a whole strip's step. */
const examplesOf = (kind: FaultKindName): Fault[] => {
  const other = elsewhere(kind)
  const far = kind === 'belt.timing' ? ['belt.timing=8', 'belt.timing=-8'].map(faultOf) : []
  return [exampleOf(kind), ...(other ? [other] : []), ...far]
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
            const run = startRun({ ...soundScenario(card), faults: [fault], bed: bedOf(first, last) })
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
        const run = machine(rows, ['strip.3.seized'], { bed: bedOf(first, last) })
        expect(sampleWords(run, sampleOf(run, 1))).not.toMatch(/mirror|further to/)
      }
  })
})
