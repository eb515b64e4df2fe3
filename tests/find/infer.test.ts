import { describe, expect, test } from 'vitest'
import { slips } from '@/find/chances.ts'
import type { Place } from '@/find/place.ts'
import { infer, inferWhole } from '@/find/infer.ts'
import { mostLooks } from '@/find/looks.ts'
import { nextLooks } from '@/find/next.ts'
import type { NotedPass, Query } from '@/find/query.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { everyHole } from '@/mechanism/card.ts'
import { usualPlace } from '@/mechanism/bed.ts'

// R7 is needle 106, and every eighth is of its strip.
const missed = Array.from({ length: 200 }, (_, n) => (n % 8 === 2 ? 'p' : 's')).join('')
const pass: NotedPass = { card: [everyHole], row: 1, way: 1, speed: 500, needles: missed }
const query: Query = { card: [everyHole], passes: [pass], slip: slips.sure, checks: [], ...usualPlace }

const wrong = (from: Query, place: Place): number =>
  infer(from).places.find((one) => one.place === place)?.wrong ?? 0
const odds = (from: Query, place: Place): number => wrong(from, place) / (1 - wrong(from, place))

describe('what may be wrong', () => {
  test('is found from the needles that were seen', () => {
    const { places, ranked, unexplained } = infer(query)
    expect(places[0]).toMatchObject({ place: 'strip.7' })
    expect(places[0]!.wrong).toBeGreaterThan(0.95)
    expect(places[0]!.ways[0]!.causes).toEqual(['strip.7.seized'])
    expect(ranked[0]!.faults).toEqual([['strip.7.seized']])
    expect(unexplained).toEqual([])
  })

  test('has the likeliest first, and machines whose chances add up to 1', () => {
    const { places, ranked, oil } = infer(query)
    const chances = places.map((place) => place.wrong)
    expect(chances).toEqual([...chances].sort((one, other) => other - one))
    expect(Math.min(...chances)).toBeGreaterThanOrEqual(0.01)
    for (const { wrong: whole, ways } of places)
      expect(ways.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(whole, 9)
    expect(ranked.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9)
    expect(ranked.at(-1)!.faults).toBeNull()
    expect(oil.fresh + oil.old + oil.set).toBeCloseTo(1, 9)
  })

  test('names together what no look parts', () => {
    const column = missed.replaceAll('p', 's').split('')
    for (let n = 4; n < 200; n += 24) column[n] = 'p'
    const { places } = infer({ ...query, passes: [{ ...pass, needles: column.join('') }] })
    expect(places[0]!.place).toBe('column.1')
    expect(places[0]!.ways[0]!.causes).toEqual(['pin.1.low', 'rocker.1.dead'])
  })

  test('takes a single odd note for what is likelier, and says so', () => {
    const card = [everyHole, 0, everyHole, 0]
    const passes = card.map((row, n): NotedPass => ({
      card,
      row: n + 1,
      way: n % 2 === 0 ? 1 : -1,
      speed: 500,
      needles: (row === 0 ? 'p' : 's').repeat(200),
    }))
    const slipped = [{ ...passes[0]!, needles: `${'s'.repeat(50)}p${'s'.repeat(149)}` }, ...passes.slice(1)]
    const { unexplained } = infer({ ...query, card, passes: slipped })
    expect(unexplained).toEqual([{ pass: 0, needle: 50, chance: expect.any(Number) as number }])
    expect(infer({ ...query, card, passes }).unexplained).toEqual([])
  })

  test('refuses more looks than can be weighed together', () => {
    const passes = Array.from({ length: mostLooks + 1 }, () => pass)
    expect(() => infer({ ...query, passes })).toThrow(RangeError)
  })
})

describe('what was found at parts', { timeout: 180_000 }, () => {
  const beside: Query = {
    ...query,
    passes: [{ ...pass, needles: `${'?'.repeat(106)}ps${'?'.repeat(92)}` }],
  }

  test('makes what was found likelier, and what was found right less so', () => {
    const before = odds(beside, 'strip.7')
    const found = odds(
      { ...beside, checks: [{ check: 'strips', found: faultOf('strip.7.seized') }] },
      'strip.7',
    )
    const right = odds({ ...beside, checks: [{ check: 'strips', found: null }] }, 'strip.7')
    expect(found).toBeGreaterThan(3 * before)
    expect(right).toBeLessThan(before / 3)
    const settings = { ...beside, checks: [{ check: 'settings' as const, found: faultOf('carriage.plain') }] }
    expect(wrong(settings, 'carriage')).toBeGreaterThan(wrong(beside, 'carriage'))
  })

  test('says nothing of the amount, and nothing where it was a pass', () => {
    const slow = (id: 'strip.7.slow=100' | 'strip.7.slow=1000'): Query => ({
      ...beside,
      checks: [{ check: 'strips', found: faultOf(id) }],
    })
    expect(infer(slow('strip.7.slow=100'))).toEqual(infer(slow('strip.7.slow=1000')))
    expect(infer({ ...beside, checks: [{ check: 'next-row', found: null }] })).toEqual(infer(beside))
  })

  test('is not looked at again', () => {
    const checks = (from: Query) => nextLooks(from, inferWhole(from)).map(({ check }) => check)
    expect(checks(beside)).toContain('holes-right')
    expect(checks({ ...beside, checks: [{ check: 'holes-right', found: null }] })).not.toContain(
      'holes-right',
    )
  })
})
