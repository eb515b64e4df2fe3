import { describe, expect, test } from 'vitest'
import { tryFinder, tryStripSets } from '@/commands/bench/finder.ts'
import { machinesOf } from '@/commands/bench/machine.ts'
import { measuresOf } from '@/commands/bench/measures.ts'
import { allSeized, namesAllWhereNothing, stripSets } from '@/commands/bench/strip-sets.ts'
import { bedsOf, truthOf } from '@/commands/bench/truth.ts'
import type { Finding } from '@/find/finding.ts'
import { allPlaces, type Place, stripPlace } from '@/find/place.ts'
import type { Query } from '@/find/query.ts'
import { everyHole } from '@/mechanism/card.ts'
import { allStrips } from '@/mechanism/indices.ts'

const nothing: Finding = {
  places: [],
  oil: { fresh: 0.5, old: 0.3, set: 0.2 },
  wear: { mean: 0.1, low: 0, high: 0.3 },
  together: [],
  unexplained: [],
  ranked: [],
  isExact: true,
}

const finding = (wrong: Iterable<Place>): Finding => ({
  ...nothing,
  places: Array.from(wrong, (place) => ({ place, wrong: 0.999, before: 0.01, ways: [] })),
})

describe('a finder that is tried', () => {
  test('is asked about each machine of the bench, and again with one mark changed', () => {
    const asked: Query[] = []
    const { tried, times } = tryFinder((query) => (asked.push(query), nothing), 2, 12)
    expect(tried.map(({ machine }) => machine)).toEqual(machinesOf(2, 12))
    expect(tried.map(({ truth }) => truth)).toEqual(machinesOf(2, 12).map(truthOf))
    expect([times.first.length, times.oneMark.length, asked.length]).toEqual([12, 12, 24])
    for (const [n, query] of asked.entries()) {
      if (n % 2 === 0) continue
      const before = asked[n - 1]!
      expect(query.passes.slice(1)).toEqual(before.passes.slice(1))
      expect(query.passes[0]!.needles).not.toBe(before.passes[0]!.needles)
      expect(query.passes[0]!.needles.slice(1)).toBe(before.passes[0]!.needles.slice(1))
    }
  })

  test('reaches all of its aims where it knows the truth, and few where it says the same of every machine', () => {
    const truths = machinesOf(2, 40).flatMap((machine) => [machine, machine])
    let n = 0
    const knowing = tryFinder(
      () => ({
        ...finding(truthOf(truths[n]!).keys()),
        wear: { mean: truths[n]!.wear, low: 0, high: truths[n++]!.wear },
      }),
      2,
      40,
    )
    const values = measuresOf(knowing.tried).map(({ value }) => value)
    expect(values.slice(0, 5)).toEqual([1, 1, 1, 1, 1])
    expect(values.slice(6)).toEqual([0, 0, 1, 0])
    const [found, , right] = measuresOf(tryFinder(() => finding(allPlaces), 2, 40).tried)
    expect(found!.value).toBe(1)
    expect(right!.value).toBeLessThan(0.05)
    expect(measuresOf(tryFinder(() => nothing, 2, 40).tried)[0]!.value).toBe(0)
  })
})

describe('sets of strips', () => {
  const sets = stripSets(1, 64)

  test('are of one to eight strips, seized or slow from 120 ms, not all of them seized', () => {
    expect(sets.map(({ faults }) => faults.length)).toEqual(sets.map((_, n) => (n % 8) + 1))
    const faults = sets.flatMap((machine) => machine.faults)
    expect(new Set(faults.map(({ kind }) => kind))).toEqual(new Set(['strip.slow', 'strip.seized']))
    for (const { kind, amount } of faults)
      if (kind === 'strip.slow') expect(amount).toBeGreaterThanOrEqual(120)
    for (const machine of sets) {
      expect(new Set(machine.faults.map(({ at: [strip] }) => strip)).size).toBe(machine.faults.length)
      expect(machine.faults.filter(({ kind }) => kind === 'strip.seized').length).toBeLessThan(8)
    }
  })

  test('all show, in the four rows at both speeds', () => {
    for (const machine of sets) {
      expect(machine.looks.map(({ row, speed }) => [row, speed])).toEqual(
        [500, 900].flatMap((speed) => [1, 2, 3, 4].map((row) => [row, speed])),
      )
      for (const notes of truthOf(machine).values()) expect(notes).toBeGreaterThanOrEqual(3)
    }
  })

  test('are found where each strip is given over one half, in a query without slips', () => {
    let asked = 0
    const all = tryStripSets(
      (query) => {
        const machine = [...sets, allSeized][asked++]!
        expect(query.passes.map(({ needles }) => needles)).toEqual(bedsOf(machine))
        return finding(truthOf(machine).keys())
      },
      1,
      64,
    )
    expect(all).toEqual({ sets: 64, found: 64, allSeized: false })
    expect(tryStripSets(() => finding(['strip.1']), 1, 64).found).toBe(
      sets.filter(({ faults }) => faults.length === 1 && faults[0]!.at[0] === 1).length,
    )
  })

  test('select nothing where all are seized, which is to be said of all that it may be', () => {
    expect(bedsOf(allSeized).join('')).toMatch(/^p{1600}$/)
    expect(allSeized.card[0]).toBe(everyHole)
    const places: Place[] = ['carriage', 'belt', 'gate', 'sweep', 'card', ...allStrips.map(stripPlace)]
    expect(namesAllWhereNothing({ together: [{ places, wrong: 0.99 }] })).toBe(true)
    for (const place of places)
      expect(
        namesAllWhereNothing({ together: [{ places: places.filter((one) => one !== place), wrong: 0.99 }] }),
      ).toBe(false)
  })
})
