import { describe, expect, test } from 'vitest'
import {
  oilChances,
  pivotChances,
  readers,
  retainerChances,
  slips,
  stripChances,
  wearChances,
} from '@/find/chances.ts'
import type { PossibleBed } from '@/find/close-search.ts'
import { weighingOf } from '@/find/hidden.ts'
import { infer } from '@/find/infer.ts'
import { logSum } from '@/find/log-sum.ts'
import { oilStates } from '@/find/oil-states.ts'
import { possibleBeds } from '@/find/possible-beds.ts'
import { posteriorOf } from '@/find/posterior.ts'
import { chanceLog } from '@/find/rough-search.ts'
import { rightBed } from '@/find/wide-states.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { card, noted } from './two-passes.ts'

/** The shares of beds, but for the slightest. */
const sharesOf = (beds: readonly PossibleBed[]): number[] => {
  const whole = logSum(beds.map(({ log }) => log))
  const shares = beds.map(({ log }) => Math.exp(log - whole))
  const kept = shares.reduce((sum, share) => (share < 5e-4 ? sum : sum + share), 0)
  return shares.map((share) => (share / kept < 5e-4 ? 0 : share / kept))
}

describe('states of the whole bed that the notes leave possible', () => {
  test.each<[string, FaultId[]]>([
    ['nothing wrong', []],
    ['a worn bar', ['retainer.worn=9']],
    ['loose pivots', ['pivots.loose=0.6']],
    ['a worn presser', ['presser.right.worn=0.9']],
  ])('have their sums, with the bars that these speak for: %s', (_, ids) => {
    const { setting, looks } = noted(...ids)
    const beds = possibleBeds(setting, looks)
    for (const { state, sums, bars, logs, log } of beds) {
      expect(bars.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
      const weighed = weighingOf(setting.byHand, sums.frame.retainer, sums.hidden, sums.strips).logs
      expect([...logs]).toEqual([...weighed])
      const own = bars.find(({ retainer }) => retainer === sums.frame.retainer)!
      // Other bars go with this one by how much likelier they are together than it alone.
      expect(log).toBeCloseTo(chanceLog(setting, state) + logSum(logs) - Math.log(own.share), 9)
    }
    const right = beds.filter(({ state }) => state === rightBed)
    if (ids.length < 1 || ids[0] === 'retainer.worn=9')
      expect(right.some(({ bars }) => bars.some(({ retainer }) => retainer < 0))).toBe(true)
    if (ids[0] === 'pivots.loose=0.6') expect(right[0]!.sums.depth).toBe('loose')
    if (ids[0] === 'retainer.worn=9') expect(right.length).toBeGreaterThan(1)
  })

  test.each<[string, FaultId[]]>([
    ['nothing wrong', []],
    ['a worn bar and a strip', ['retainer.worn=9', 'strip.3.seized']],
    ['loose pivots', ['pivots.loose=0.6']],
    ['a worn presser', ['presser.right.worn=0.9']],
  ])('add up to what is said of oil, wear, reader and whole bed: %s', (_, ids) => {
    const { setting, looks } = noted(...ids)
    const beds = possibleBeds(setting, looks)
    const shares = sharesOf(beds)
    const { posterior, machines } = posteriorOf(beds, looks)
    const sum = (of: (bed: PossibleBed) => number): number =>
      beds.reduce((all, bed, n) => all + shares[n]! * of(bed), 0)
    const within = ({ logs, sums }: PossibleBed, isIt: (h: number, o: number) => boolean): number => {
      const whole = logSum(logs)
      return logs.reduce(
        (all, log, n) =>
          isIt(n % sums.hidden.length, Math.floor(n / sums.hidden.length))
            ? all + Math.exp(log - whole)
            : all,
        0,
      )
    }
    for (const oil of ['fresh', 'old', 'set'] as const)
      expect(posterior.oil[oil]).toBeCloseTo(
        sum((bed) => within(bed, (__, o) => oilStates[o]!.oil === oil)),
        4,
      )
    for (const wear of wearChances.keys())
      expect(posterior.wear[wear]).toBeCloseTo(
        sum((bed) => within(bed, (h) => bed.sums.hidden[h]!.wear === wear)),
        4,
      )
    for (const reader of readers.keys())
      expect(posterior.reader[reader]).toBeCloseTo(
        sum((bed) => within(bed, (h) => bed.sums.hidden[h]!.reader === reader)),
        4,
      )
    const ways = new Map(
      posterior.tally
        .entries()
        .map(({ place, ways: own }) => [place, own.reduce((all, { weight }) => all + weight, 0)] as const),
    )
    const places = ['carriage', 'turn', 'belt', 'presser', 'gate', 'sweep'] as const
    for (const place of places)
      expect(ways.get(place) ?? 0).toBeCloseTo(
        sum(({ state }) => state.causes.filter((cause) => cause.place === place).length),
        9,
      )
    const bar = sum(({ bars }) =>
      bars.reduce((all, { retainer, share }) => (retainer < 0 ? all : all + share), 0),
    )
    expect(ways.get('retainer') ?? 0).toBeCloseTo(bar, 9)
    expect(posterior.wide.reduce((all, { weight }) => all + weight, 0)).toBeCloseTo(1, 9)
    expect(
      posterior.wide.reduce(
        (all, { places: own, weight }) => (own.includes('retainer') ? all + weight : all),
        0,
      ),
    ).toBeCloseTo(bar, 9)
    const loose = sum((bed) => within(bed, (h) => bed.sums.hidden[h]!.pivots > 0))
    expect(ways.get('pivots') ?? 0).toBeCloseTo(loose, 4)
    expect(machines.map(({ share }) => share)).toHaveLength(shares.filter((share) => share > 0).length)
    expect(machines.reduce((all, { share }) => all + share, 0)).toBeCloseTo(1, 9)
    expect(machines.reduce((all, { share, loose: own }) => all + share * own, 0)).toBeCloseTo(loose, 4)
  })
})

describe('what is said before anything is seen', () => {
  const finding = infer({ ...usualPlace, card, passes: [], slip: slips.sure, checks: [] })
  const wrong = (place: string): number => finding.places.find((one) => one.place === place)?.wrong ?? 0

  test('is the tables’, but for what close sums leave out', () => {
    const near = (is: number, expected: number): void => {
      expect(Math.abs(is - expected)).toBeLessThan(0.04)
    }
    for (const oil of ['fresh', 'old', 'set'] as const) near(finding.oil[oil], oilChances[oil])
    near(
      finding.wear.mean,
      wearChances.reduce((sum, { wear, chance }) => sum + wear * chance, 0),
    )
    expect(finding.wear.low).toBe(0)
    // Nineteen in twenty machines are worn by 0.8 or less, just so.
    expect([0.8, 0.85]).toContain(finding.wear.high)
    const strip = (['fresh', 'old', 'set'] as const).reduce((sum, oil) => {
      const { slow, seized, over } = stripChances[oil]
      return sum + oilChances[oil] * (slow + seized + over)
    }, 0)
    for (const n of [1, 8]) near(wrong(`strip.${n}`), strip)
    const bar = (['fresh', 'old', 'set'] as const).reduce(
      (sum, oil) => sum + oilChances[oil] * retainerChances[oil],
      0,
    )
    near(wrong('retainer'), bar)
    expect(wrong('pivots')).toBeCloseTo(1 - pivotChances[0]!.chance, 6)
    expect(finding.isExact).toBe(false)
    expect(finding.unexplained).toEqual([])
  })
})
