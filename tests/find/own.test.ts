import { describe, expect, test } from 'vitest'
import { peaksOf } from '@/find/peaks.ts'
import { fitOfMachine } from '@/find/machine-fit.ts'
import { infer, inferWhole } from '@/find/infer.ts'
import { nextLooks } from '@/find/next.ts'
import { placeOfFault } from '@/find/place.ts'
import { proofPasses } from '@/find/prove.ts'
import { soundParts } from '@/find/sound-parts.ts'
import { speakingFor } from '@/find/needle-evidence.ts'
import { statementOf } from '@/find/statement.ts'
import type { Query } from '@/find/query.ts'
import { amountsFor } from '@/find/wide-amounts.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { dimensionsOf, type Own } from '@/mechanism/own.ts'
import { firstPasses, randomCard } from './make.ts'
import { notedQuery } from './noted.ts'

const card = [...randomCard(6, 5), 0xffffff, 0]
const looks = [...firstPasses(card.length, card.length, 500), ...firstPasses(card.length, 2, 900)].map(
  (pass, n) => ({ ...pass, pass: (n % card.length) + 1 }),
)

/** Eight rows, and the first two again fast, of a machine with dimensions of its own. */
const noted = (own: Own, ...ids: readonly FaultId[]): Query =>
  notedQuery(card, looks, ids, { ...usualPlace, own })

const likely = (query: Query): string[] =>
  infer(query).places.flatMap(({ place, wrong }) => (wrong > 0.5 ? [place] : []))

const machines: readonly (readonly [string, Own])[] = [
  ['needles wider apart, and a near gate', { pitch: 5, gateLag: 1.2 }],
  ['a light rocker and a low reach', { sweepThrow: 1.7, lost: 0.1, reach: 1 }],
  [
    'everything deeper',
    { catchDepth: 1.2, presserRight: 2, presserLeft: 1.9, gate1: 0.6, gate2: 2.1, pinHigh: 3.5 },
  ],
  ['a bed of 60 needles', { needles: 60 }],
  ['a bed of 124 needles, wide apart', { needles: 124, pitch: 9 }],
  ['a bed of 250 needles', { needles: 250 }],
]

describe('a machine with dimensions of its own', { timeout: 240_000 }, () => {
  test.each(machines)('is sound where it does what those make of it: %s', (_, own) => {
    expect(likely(noted(own))).toEqual([])
  })

  test.each(machines)('has each single fault found: %s', (_, own) => {
    const { presserLeft, gateLow } = amountsFor(dimensionsOf(own))
    const faults: FaultId[] = [
      'strip.3.seized',
      'strip.6.slow=300',
      'strip.8.over',
      'pin.5.low',
      'pin.20.high',
      'needle.R3.gone',
      'needle.L30.bent',
      'belt.timing=8',
      `presser.left.worn=${presserLeft}`,
      'card.reversed',
    ]
    for (const id of faults) expect([id, likely(noted(own, id))]).toEqual([id, [placeOfFault(faultOf(id))]])
    expect(gateLow).toBeGreaterThan(0)
  })

  test('is called broken where the search takes it for the training machine', () => {
    const slow: Own = { buttReturn: 9 }
    const query = noted(slow)
    expect(likely(query)).toEqual([])
    const { own, ...without } = query
    expect(own).toBe(slow)
    expect(likely(without)).not.toEqual([])
  })

  test('counts as another in what was computed before', () => {
    const query = noted({ pitch: 5 }, 'strip.2.slow=200')
    const first = infer(query)
    infer({ ...query, own: { pitch: 9 } })
    expect(infer(query)).toEqual(first)
    expect(peaksOf(dimensionsOf({ pitch: 5 }))).toBe(peaksOf(dimensionsOf({ pitch: 5 })))
    expect(peaksOf(dimensionsOf({ pitch: 5 }))).not.toBe(peaksOf(dimensions))
  })
})

describe('a bed of another length', { timeout: 120_000 }, () => {
  test.each<[number, FaultId, FaultId]>([
    [60, 'needle.L30.gone', 'catch.R30.broken'],
    [250, 'needle.L125.gone', 'catch.R125.broken'],
  ])('of %d needles has its end needles found, and all else that is said of them', (needles, left, right) => {
    const query = noted({ needles }, left, right)
    const inference = inferWhole(query)
    const { finding } = inference
    const places = [left, right].map((id) => placeOfFault(faultOf(id)))
    expect(
      finding.places
        .filter(({ wrong }) => wrong > 0.5)
        .map(({ place }) => place)
        .sort(),
    ).toEqual(places.sort())
    const [first] = finding.ranked
    expect(fitOfMachine(query, first!.faults!)).toMatchObject({ contrary: 0, looked: needles * looks.length })
    const speaks = speakingFor(query, finding, placeOfFault(faultOf(left)))
    expect(speaks.flatMap((pass) => pass.for)).toEqual(looks.map(() => 100 - needles / 2))
    expect(nextLooks(query, inference).length).toBeGreaterThan(0)
    expect(soundParts(query, finding).find(({ part }) => part === 'needle')).toMatchObject({ of: needles })
    const wrong = statementOf(query).wrong.map(({ needle }) => needle)
    expect(new Set(wrong)).toEqual(new Set([100 - needles / 2, 99 + needles / 2]))
    expect(proofPasses({ ...query, worked: [] }).passes.length).toBeGreaterThan(0)
  })

  test('has as many needles in its notes, and what nothing explains is named on it', () => {
    const query = noted({ needles: 250 })
    const [first, ...others] = query.passes
    const slip = first!.needles.startsWith('s') ? 'p' : 's'
    const passes = [{ ...first!, needles: slip + first!.needles.slice(1) }, ...others]
    expect(infer({ ...query, passes }).unexplained).toMatchObject([{ pass: 0, needle: -25 }])
  })
})
