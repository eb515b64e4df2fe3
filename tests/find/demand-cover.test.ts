import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Demand, fewestLooks } from '@/find/demand-cover.ts'

const isMet = (demand: Demand, looks: readonly number[]): boolean =>
  looks.reduce((sum, look) => sum + demand[look]!, 0) >= 1 - 1e-9

/** The fewest looks of all sets, by trying every set; Infinity where all of them together won't do. */
const byForce = (demands: readonly Demand[], count: number): number => {
  let least = Infinity
  for (let set = 0; set < 1 << count; set++) {
    const looks = Array.from({ length: count }, (_, n) => n).filter((n) => (set >> n) & 1)
    if (looks.length < least && demands.every((demand) => isMet(demand, looks))) least = looks.length
  }
  return least
}

const shares = fc.constantFrom(0, 0, 0, 0.25, 0.4, 0.5, 1)
const someDemands = fc
  .integer({ min: 1, max: 9 })
  .chain((count) =>
    fc.record({
      count: fc.constant(count),
      rows: fc.array(fc.array(shares, { minLength: count, maxLength: count }), { maxLength: 8 }),
    }),
  )
  .map(({ count, rows }) => ({ count, demands: rows.map((row) => Float64Array.from(row)) }))

describe('the fewest looks', () => {
  test('meet every demand, and are as few as any set that does', () => {
    fc.assert(
      fc.property(someDemands, ({ demands, count }) => {
        const least = byForce(demands, count)
        if (least === Infinity) {
          expect(() => fewestLooks(demands, count)).toThrow(RangeError)
          return
        }
        const { taken, atLeast } = fewestLooks(demands, count)
        for (const demand of demands) expect(isMet(demand, taken)).toBe(true)
        expect(taken).toEqual([...new Set(taken)].sort((one, other) => one - other))
        expect(taken).toHaveLength(least)
        expect(atLeast).toBe(least)
      }),
      { numRuns: 400 },
    )
  })

  test('are none where nothing is asked', () => {
    expect(fewestLooks([], 5)).toEqual({ taken: [], atLeast: 0 })
  })

  test('add up what goes by chance: three looks of half a share are one too many', () => {
    expect(fewestLooks([Float64Array.of(0.5, 0.5, 0.5)], 3).taken).toHaveLength(2)
    expect(fewestLooks([Float64Array.of(0.5, 0.5, 0.5), Float64Array.of(0, 0, 1)], 3).taken).toEqual([0, 2])
  })

  test('of equals take the plainest, which comes first', () => {
    expect(fewestLooks([Float64Array.of(1, 1, 1)], 3).taken).toEqual([0])
  })

  test('find fewer than always taking the look that meets most', () => {
    // The first look meets four of six, and then two more are needed; the other two halves do by themselves.
    const rows = [
      [1, 1, 0],
      [1, 1, 0],
      [0, 1, 0],
      [1, 0, 1],
      [1, 0, 1],
      [0, 0, 1],
    ]
    expect(
      fewestLooks(
        rows.map((row) => Float64Array.from(row)),
        3,
      ),
    ).toEqual({ taken: [1, 2], atLeast: 2 })
  })

  test('have an honest bound where there is too much to try', () => {
    // Each of 90 looks meets about six of 60 demands: no bound cuts the search short.
    let state = 5
    const next = (): number => (state = (state * 1103515245 + 12345) % 2147483648)
    const demands = Array.from({ length: 60 }, (_, n) => {
      const demand = new Float64Array(90)
      demand[n] = 1
      return demand
    })
    for (let look = 0; look < 90; look++)
      for (let n = 0; n < 6; n++) demands[Math.floor(next() / 65536) % 60]![look] = 1
    const { taken, atLeast } = fewestLooks(demands, 90)
    for (const demand of demands) expect(isMet(demand, taken)).toBe(true)
    expect(atLeast).toBeLessThan(taken.length)
    // No look meets more than seven.
    expect(taken.length).toBeGreaterThanOrEqual(Math.ceil(60 / 7))
    expect(atLeast).toBeGreaterThan(3)
  })
})
