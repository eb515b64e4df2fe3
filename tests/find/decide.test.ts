import { describe, expect, test } from 'vitest'
import { decide, type Decision, type Prices, type WayToGo } from '@/find/decide.ts'
import { inferWhole } from '@/find/infer.ts'
import { openingMinutes, type RepairId, repairOf } from '@/find/repairs.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { randomCard } from './make.ts'
import { mixedPasses, notedQuery } from './noted.ts'

const card = randomCard(6, 17)
const passes = mixedPasses(card.length, 6)

const decisionOf = (ids: readonly FaultId[], prices: Prices | null = null, seed = 1): Decision => {
  const query = notedQuery(card, passes, ids)
  return decide(query, inferWhole(query), seed, prices)
}

const wayOf = ({ ways }: Decision, ...repairs: RepairId[]): WayToGo | undefined =>
  ways.find(({ works }) => works.map(({ repair }) => repair).join() === repairs.join())

describe('what may be done', { timeout: 120_000 }, () => {
  test('with a seized strip: cleaning it brings the pattern back, and nothing else does', () => {
    const decision = decisionOf(['strip.3.seized'])
    expect(decision.now).toBe(0)
    const [best] = decision.ways
    expect(best!.works).toEqual([{ repair: 'strips', places: ['strip.3'] }])
    expect(best!.chance).toBeGreaterThan(0.5)
    expect(best).toMatchObject({ opens: ['cover'], opened: 'one-cover', parts: [], cost: null })
    expect(best!.minutes).toBe(openingMinutes.cover + repairOf('strips').minutes.first)
    for (const way of decision.ways)
      if (!way.works.some(({ repair }) => repair === 'strips')) expect(way.chance).toBe(0)
    expect(best!.unknown).not.toContain('strip.3')
    // What hides behind a strip that does not move stays unknown.
    expect(best!.unknown).toEqual(expect.arrayContaining(['column.3', 'column.11', 'column.19']))
  })

  test('with a worn bar: a new one is the way, and the machine does not knit even plain before', () => {
    const decision = decisionOf(['retainer.worn=12'])
    expect(decision.plain).toBeLessThan(0.05)
    expect(decision.ways[0]!.works[0]!.repair).toBe('retainer')
    expect(wayOf(decision, 'retainer')!.parts).toEqual([{ part: 'retainer-bar', count: 1, isSure: true }])
    expect(wayOf(decision, 'retainer')!.chance).toBeGreaterThan(0.3)
  })

  test('with a setting: it comes before all that takes longer', () => {
    const decision = decisionOf(['carriage.plain'])
    expect(decision.ways[0]!.works.map(({ repair }) => repair)).toEqual(['settings'])
    expect(decision.ways[0]!.opened).toBe('nothing')
  })

  test('with a needle that no look distinguishes from its catch: each is mended by its own work', () => {
    const decision = decisionOf(['needle.R12.bent'])
    const needles = wayOf(decision, 'needles')!
    const catches = wayOf(decision, 'catches')!
    const both = wayOf(decision, 'needles', 'catches')!
    expect(needles.chance).toBeGreaterThan(catches.chance)
    expect(both.chance).toBeGreaterThan(needles.chance)
    expect(both.chance).toBeGreaterThan(0.8)
    expect(decision.ways[0]).toEqual(needles)
    expect(both.opens).toEqual(['bar', 'cover', 'covers'])
    expect(both.risk).toBe(repairOf('catches').risk)
  })

  test('is best first: by how much likelier the pattern is to come out whole for the time', () => {
    for (const ids of [
      ['pin.5.low', 'strip.2.seized'],
      ['needle.R1.gone', 'retainer.worn=9'],
    ] as FaultId[][]) {
      const { ways, now } = decisionOf(ids)
      const gains = ways.map(({ chance, minutes }) => (chance - now) / (minutes + 5))
      expect(gains).toEqual([...gains].sort((one, other) => other - one))
      expect(new Set(ways.map((way) => JSON.stringify(way.works))).size).toBe(ways.length)
    }
  })

  test('does more with more: to mend all that is in doubt is never worse than some of it', () => {
    const { ways } = decisionOf(['pin.5.low', 'strip.2.seized', 'needle.R30.bent'])
    const placesOf = ({ works }: WayToGo): Set<string> =>
      new Set(works.flatMap(({ repair, places }) => places.map((place) => `${repair} ${place}`)))
    let compared = 0
    for (const less of ways)
      for (const more of ways) {
        if (less === more || [...placesOf(less)].some((place) => !placesOf(more).has(place))) continue
        compared++
        expect(more.minutes).toBeGreaterThan(less.minutes)
        expect(more.unknown.length).toBeLessThanOrEqual(less.unknown.length)
        expect(more.chance).toBeGreaterThanOrEqual(less.chance)
      }
    expect(compared).toBeGreaterThan(4)
  })

  test('leaves nothing unknown where all is worked on', () => {
    const { ways } = decisionOf(['strip.3.seized'])
    expect(Math.min(...ways.map(({ unknown }) => unknown.length))).toBe(0)
  })

  test('with a sound machine: nothing needs doing', () => {
    const { now, plain } = decisionOf([])
    expect(now).toBeGreaterThan(0.9)
    expect(plain).toBeGreaterThan(0.95)
  })

  test('without anything seen: every chance is one, and nothing is sure', () => {
    const query = notedQuery(null, [])
    const { now, plain, ways } = decide(query, inferWhole(query), 1)
    for (const chance of [now, plain, ...ways.map((way) => way.chance)]) {
      expect(chance).toBeGreaterThanOrEqual(0)
      expect(chance).toBeLessThanOrEqual(1)
    }
    expect(ways.length).toBeGreaterThan(5)
  })

  test('costs its hours and the parts that it takes for sure', () => {
    const prices: Prices = { hour: 30, parts: { needle: 2, catch: 7, strip: 100 } }
    const decision = decisionOf(['needle.R12.bent'], prices)
    const needles = wayOf(decision, 'needles')!
    expect(needles.cost).toBeCloseTo(needles.minutes / 2 + 2, 9)
    const both = wayOf(decision, 'needles', 'catches')!
    expect(both.cost).toBeCloseTo(both.minutes / 2 + 2 + 7, 9)
  })

  test('is the same for the same seed', () => {
    expect(decisionOf(['pin.5.low'], null, 4)).toEqual(decisionOf(['pin.5.low'], null, 4))
  })
})
