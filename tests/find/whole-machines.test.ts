import { describe, expect, test } from 'vitest'
import { possibleSlot } from '@/find/bed-needles.ts'
import type { StripBlock } from '@/find/blocks.ts'
import type { PossibleBed } from '@/find/close-search.ts'
import type { RankedMachine } from '@/find/finding.ts'
import { type BedMachines, rankMachines } from '@/find/whole-machines.ts'
import type { WholeBed } from '@/find/strip-shares.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, rightBed, type WideState } from '@/find/wide-states.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { summed } from './one-strip.ts'

const { sums } = summed([[1, 500, 'ssssss']], 'firm', [0])

const right: StripBlock = { strip: 'right', columns: ['right', 'right', 'right'], weight: 1 }

/** A bed whose strips are right but for some, and whose needles are but for some. */
const wholeOf = (
  strips: Readonly<Record<number, readonly StripBlock[]>>,
  needles: Readonly<Record<number, readonly number[]>> = {},
): WholeBed => {
  const chances = new Float64Array(250 * 4)
  for (const [needle, ways] of Object.entries(needles))
    chances.set(ways, possibleSlot(at(allNeedles, Number(needle))) * 4)
  return { strips: Array.from({ length: 8 }, (_, n) => strips[n + 1] ?? [right]), needles: chances, share: 1 }
}

const bedOf = (state: WideState, bars: PossibleBed['bars'] = [{ retainer: -1, share: 1 }]): PossibleBed => ({
  state,
  sums,
  bars,
  logs: new Float64Array(),
  log: 0,
})

const ranked = (...beds: readonly BedMachines[]): [string | null, number][] =>
  rankMachines(beds).map(({ faults, probability }: RankedMachine) => [
    faults && faults.map((causes) => causes.join('|')).join(' + '),
    Number(probability.toFixed(9)),
  ])

const belt = alone(wideCauses().find(({ causes }) => causes[0] === 'belt.off')!)

describe('whole machines', () => {
  test('are each combination of what strips and needles may be, the likeliest first, and then all others', () => {
    const whole = wholeOf(
      {
        1: [
          { ...right, weight: 0.7 },
          { strip: 'seized', columns: right.columns, weight: 0.2 },
          { strip: 'slow', columns: ['right', 'dead', 'right'], weight: 0.1 },
        ],
      },
      { 100: [0.3, 0, 0, 0] },
    )
    const caught = 'catch.R1.broken|needle.R1.bent'
    expect(ranked({ bed: bedOf(rightBed), whole, share: 1, loose: 0 })).toEqual([
      ['', 0.49],
      [caught, 0.21],
      ['strip.1.seized', 0.14],
      ['strip.1.slow + pin.9.low|rocker.9.dead', 0.07],
      [`strip.1.seized + ${caught}`, 0.06],
      [`strip.1.slow + pin.9.low|rocker.9.dead + ${caught}`, 0.03],
      [null, 0],
    ])
  })

  test('name each thing that a strip, a column or a needle may be', () => {
    const blocks: StripBlock[] = [
      { strip: 'over', columns: right.columns, weight: 0.3 },
      { strip: 'right', columns: ['high', 'right', 'right'], weight: 0.25 },
      { strip: 'right', columns: ['right', 'over', 'right'], weight: 0.2 },
      { strip: 'right', columns: ['right', 'right', 'sticky'], weight: 0.15 },
      { strip: 'right', columns: ['other', 'right', 'right'], weight: 0.1 },
    ]
    const one = { bed: bedOf(rightBed), share: 1, loose: 0 }
    expect(ranked({ ...one, whole: wholeOf({ 8: blocks }) })).toEqual([
      ['strip.8.over', 0.3],
      ['pin.8.high', 0.25],
      ['pin.16.over', 0.2],
      ['pin.24.sticky=0.5', 0.15],
      ['other', 0.1],
      [null, 0],
    ])
    expect(ranked({ ...one, whole: wholeOf({}, { 99: [0.1, 0.4, 0.25, 0.05] }) })).toEqual([
      ['needle.L1.stiff', 0.4],
      ['needle.L1.gone', 0.25],
      ['', 0.2],
      ['catch.L1.broken|needle.L1.bent', 0.1],
      ['other', 0.05],
      [null, 0],
    ])
  })

  test('have what reaches the whole bed, the likeliest worn bar, and loose pivots', () => {
    const bars = [
      { retainer: 1, share: 0.1 },
      { retainer: -1, share: 0.6 },
      { retainer: 4, share: 0.3 },
    ]
    const one = { whole: wholeOf({}), loose: 0 }
    expect(
      ranked(
        { ...one, bed: bedOf(rightBed, bars), share: 0.5 },
        { ...one, bed: bedOf(belt, [{ retainer: 2, share: 1 }]), share: 0.3, loose: 0.25 },
        { ...one, bed: bedOf(rightBed), share: 0.2 },
      ),
    ).toEqual([
      ['', 0.5],
      ['belt.off + retainer.worn=6', 0.225],
      ['retainer.worn=9', 0.2],
      ['belt.off + retainer.worn=6 + pivots.loose=0.4', 0.075],
      [null, 0],
    ])
  })

  test('are the same machine whatever an amount is, and whatever the order', () => {
    const bar = (retainer: number, share: number): BedMachines => ({
      bed: bedOf(rightBed, [{ retainer, share: 1 }]),
      whole: wholeOf({}),
      share,
      loose: 0,
    })
    expect(ranked(bar(0, 0.4), bar(3, 0.6))).toEqual([
      ['retainer.worn=3', 1],
      [null, 0],
    ])
  })

  test('are twenty at most, and leave out what is unlikely by itself', () => {
    const needles = Object.fromEntries(Array.from({ length: 6 }, (_, n) => [n, [0.4, 0, 0, 0]]))
    const all = ranked({ bed: bedOf(rightBed), whole: wholeOf({}, needles), share: 1, loose: 0 })
    expect(all).toHaveLength(21)
    const own = all.slice(0, -1).map(([, chance]) => chance)
    // None of six is wrong at 0.6 ^ 6, one at 0.6 ^ 5 × 0.4, two at 0.6 ^ 4 × 0.4 ^ 2.
    expect(own[0]).toBeCloseTo(0.6 ** 6, 8)
    for (const chance of own.slice(1, 7)) expect(chance).toBeCloseTo(0.6 ** 5 * 0.4, 8)
    for (const chance of own.slice(7)) expect(chance).toBeCloseTo(0.6 ** 4 * 0.16, 8)
    expect(all.at(-1)![1]).toBeCloseTo(1 - own.reduce((sum, one) => sum + one, 0), 8)
    const rare = wholeOf({}, { 3: [1e-3, 0, 0, 0] })
    expect(ranked({ bed: bedOf(rightBed), whole: rare, share: 1, loose: 0 })).toEqual([
      ['', 1],
      [null, 0],
    ])
  })
})
