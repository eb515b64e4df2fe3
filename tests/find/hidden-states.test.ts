import { describe, expect, test } from 'vitest'
import { byHandOf } from '@/find/by-hand.ts'
import {
  oilChances,
  pivotChances,
  readerChances,
  readers,
  retainerChances,
  retainerMs,
  wearChances,
} from '@/find/chances.ts'
import { hiddenOf, type StripSums, stripChancesOf, Weighing, weighingOf } from '@/find/hidden.ts'
import { logSum } from '@/find/log-sum.ts'
import { meetingClasses, oneClass } from '@/find/meeting.ts'
import { oilStates } from '@/find/oil-states.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { normalCdf } from '@/mechanism/normal.ts'
import { scatter } from '@/mechanism/wear.ts'

const everyWear = [...wearChances.keys()]
const hand = byHandOf([])
const bars = [-1, ...retainerMs.keys()]

const sumsOf = (count: number, value: Partial<StripSums> = {}): StripSums => ({
  log: 0,
  seized: 1,
  over: 1,
  fast: new Float64Array(count).fill(1),
  slow: new Float64Array(count).fill(1),
  ...value,
})

describe('what is hidden of a machine', () => {
  test('has every wear, pivot and reader once, with loose pivots or without', () => {
    expect(hiddenOf([0, 5], false)).toEqual(
      [0, 5].flatMap((wear) => [0, 1, 2].map((reader) => ({ wear, pivots: 0, reader }))),
    )
    const loose = hiddenOf([4], true)
    expect(loose).toHaveLength(pivotChances.length * readers.length)
    expect(new Set(loose.map(({ pivots, reader }) => `${pivots} ${reader}`)).size).toBe(loose.length)
    expect(loose[1]).toEqual({ wear: 4, pivots: 0, reader: 1 })
  })

  test('has chances that add up to 1 over all of it, bars among it', () => {
    const hidden = hiddenOf(everyWear, true)
    const totals = bars.map((bar) => new Weighing(hand, bar, hidden).total())
    expect(logSum(totals)).toBeCloseTo(0, 9)
    const worn =
      oilChances.fresh * retainerChances.fresh +
      oilChances.old * retainerChances.old +
      oilChances.set * retainerChances.set
    expect(Math.exp(totals[0]!)).toBeCloseTo(1 - worn, 9)
    expect(Math.exp(totals[1]!)).toBeCloseTo(worn / retainerMs.length, 9)
  })

  test('has the chance of each table, and what a hand found multiplies it', () => {
    const hidden = hiddenOf([2], true)
    const { logs } = new Weighing(hand, -1, hidden)
    for (const [o, { oil, chance }] of oilStates.entries())
      for (const [h, { pivots, reader }] of hidden.entries())
        expect(Math.exp(logs[o * hidden.length + h]!)).toBeCloseTo(
          chance *
            (1 - retainerChances[oil]) *
            wearChances[2]!.chance *
            pivotChances[pivots]!.chance *
            readerChances[readers[reader]!],
          12,
        )
    const loose = byHandOf([{ check: 'reader', found: null }])
    const other = new Weighing(loose, -1, hidden).logs
    const factor = (n: number): number => Math.exp(other[n]! - logs[n]!)
    const firm = hidden.findIndex(({ pivots }) => pivots === 0)
    const rattling = hidden.findIndex(({ pivots }) => pivots === 3)
    expect(factor(firm)).toBeCloseTo(loose.right(['pivots.loose=0.4']), 9)
    expect(factor(rattling)).toBeCloseTo(loose.causes(['pivots.loose=0.4'], ['pivots.loose=0.4']), 9)
  })

  test('is weighed by a product over strips, each a sum over its states', () => {
    const hidden = hiddenOf([0], false)
    const before = new Weighing(hand, -1, hidden)
    const weighed = new Weighing(hand, -1, hidden)
    const sums = sumsOf(3, {
      log: -2,
      seized: 0.3,
      over: 0.05,
      fast: Float64Array.from([0.5, 0.7, 0.2]),
      slow: Float64Array.from([0.1, 0.9, 0.4]),
    })
    weighed.add(3, sums)
    weighed.add(4, sums)
    for (const [o, { strips }] of oilStates.entries())
      for (let h = 0; h < 3; h++) {
        const { slow, seized, over } = strips
        const one =
          (1 - slow - seized - over) * sums.fast[h]! + slow * sums.slow[h]! + seized * 0.3 + over * 0.05
        expect(weighed.logs[o * 3 + h]! - before.logs[o * 3 + h]!).toBeCloseTo(2 * (Math.log(one) - 2), 9)
      }
    const all = weighingOf(
      hand,
      -1,
      hidden,
      Array.from({ length: 8 }, (_, n) => (n < 2 ? sums : sumsOf(3))),
    )
    expect(all.total()).toBeCloseTo(weighed.total(), 9)
  })

  test('has a strip’s states at the oil’s chances, times what a hand found', () => {
    const found = byHandOf([{ check: 'strips', found: null }])
    const { strips } = oilStates[1]!
    const own = found.strips[2]!
    expect(own.right).toBeGreaterThan(own.slow)
    expect(stripChancesOf(found, 2, strips)).toEqual({
      sound: own.right * (1 - strips.slow - strips.seized - strips.over),
      slow: own.slow * strips.slow,
      seized: own.seized * strips.seized,
      over: own.over * strips.over,
    })
  })
})

describe('wears whose dips are weighed together', () => {
  test('are every wear once: first those that all meet, then each by itself with its chance', () => {
    const [first, ...others] = meetingClasses(dimensions)
    expect(first!.meets).toBe(1)
    expect(first!.wears[0]).toBe(0)
    expect([first!, ...others].flatMap(({ wears }) => wears)).toEqual(everyWear)
    expect(others.length).toBeGreaterThan(2)
    for (const { meets, wears } of others) {
      expect(wears).toHaveLength(1)
      const { wear } = wearChances[wears[0]!]!
      const deviation = Math.sqrt(scatter(wear).catch ** 2 + scatter(wear).butt ** 2)
      const dip = Math.min(dimensions.presserRight, dimensions.presserLeft) - 0.35 * wear
      const low = normalCdf((dimensions.gate1 - dimensions.catchDepth) / deviation)
      expect(meets).toBeCloseTo(normalCdf((dip - dimensions.catchDepth) / deviation) - low, 12)
      expect(meets).toBeLessThan(1 - 1e-4)
    }
    expect(others.map(({ meets }) => meets)).toEqual(others.map(({ meets }) => meets).sort((a, b) => b - a))
  })

  test('never meet where the presser dips less than the catches are deep, and all do as one where nothing holds', () => {
    const shallow = { ...dimensions, presserLeft: dimensions.catchDepth - 1 }
    expect(meetingClasses(shallow).at(-1)!.meets).toBeLessThan(1e-6)
    expect(meetingClasses(shallow)[0]).toEqual({ meets: 1, wears: [0] })
    expect(oneClass).toEqual({ meets: 1, wears: everyWear })
  })
})
