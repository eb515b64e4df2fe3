import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Demand } from '@/find/demand.ts'
import { fewestLooks } from '@/find/fewest-looks.ts'

const isMet = (demand: Demand, looks: readonly number[]): boolean =>
  looks.reduce((sum, look) => sum + demand[look]!, 0) >= 1 - 1e-9

/** So many looks of which none excludes another. */
const alone = (count: number): number[] => Array.from({ length: count }, (_, look) => look)

const hasTwins = (looks: readonly number[], twins: readonly number[]): boolean =>
  looks.some((look) => twins[look] !== look && looks.includes(twins[look]!))

/** The fewest looks of all sets without twins, by trying every set; Infinity where none will do. */
const byForce = (demands: readonly Demand[], twins: readonly number[]): number => {
  let least = Infinity
  for (let set = 0; set < 1 << twins.length; set++) {
    const looks = [...twins.keys()].filter((n) => (set >> n) & 1)
    if (looks.length >= least || hasTwins(looks, twins)) continue
    if (demands.every((demand) => isMet(demand, looks))) least = looks.length
  }
  return least
}

const shares = fc.constantFrom(0, 0, 0, 0.25, 0.4, 0.5, 1)

/** Demands of some looks, of which the first so many pairs are twins. */
const someDemands = fc
  .record({ count: fc.integer({ min: 1, max: 9 }), pairs: fc.integer({ min: 0, max: 4 }) })
  .chain(({ count, pairs }) =>
    fc.record({
      twins: fc.constant(
        alone(count).map((look) => ((look ^ 1) < count && look < 2 * pairs ? look ^ 1 : look)),
      ),
      demands: fc.array(
        fc.array(shares, { minLength: count, maxLength: count }).map((row): Demand => Float64Array.from(row)),
        { maxLength: 8 },
      ),
    }),
  )

describe('the fewest looks', () => {
  test('meet every demand, and are as few as any set that does', () => {
    fc.assert(
      fc.property(someDemands, ({ demands, twins }) => {
        const least = byForce(demands, twins)
        const found = fewestLooks(demands, twins)
        if (least === Infinity) {
          expect(found).toBeNull()
          return
        }
        const { taken, atLeast } = found!
        for (const demand of demands) expect(isMet(demand, taken)).toBe(true)
        expect(hasTwins(taken, twins)).toBe(false)
        expect(taken).toEqual([...new Set(taken)].sort((one, other) => one - other))
        expect(taken).toHaveLength(least)
        expect(atLeast).toBe(least)
      }),
      { numRuns: 600 },
    )
  })

  test('are none where nothing is asked', () => {
    expect(fewestLooks([], alone(5))).toEqual({ taken: [], atLeast: 0 })
  })

  test('add up what goes by chance: three looks of half a share are one too many', () => {
    expect(fewestLooks([Float64Array.of(0.5, 0.5, 0.5)], alone(3))!.taken).toHaveLength(2)
    expect(fewestLooks([Float64Array.of(0.5, 0.5, 0.5), Float64Array.of(0, 0, 1)], alone(3))!.taken).toEqual([
      0, 2,
    ])
  })

  test('are never twins: where only both would do, there are none', () => {
    expect(fewestLooks([Float64Array.of(1, 0), Float64Array.of(0, 1)], [1, 0])).toBeNull()
    // The first two meet all by themselves, but exclude one another.
    const demands = [Float64Array.of(1, 0, 1, 0), Float64Array.of(0, 1, 0, 1)]
    expect(fewestLooks(demands, [1, 0, 2, 3])!.taken).toEqual([0, 3])
  })

  test('of equals take the plainest, which comes first', () => {
    expect(fewestLooks([Float64Array.of(1, 1, 1)], alone(3))!.taken).toEqual([0])
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
        alone(3),
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
    const { taken, atLeast } = fewestLooks(demands, alone(90))!
    for (const demand of demands) expect(isMet(demand, taken)).toBe(true)
    expect(atLeast).toBeLessThan(taken.length)
    // No look meets more than seven.
    expect(taken.length).toBeGreaterThanOrEqual(Math.ceil(60 / 7))
    expect(atLeast).toBeGreaterThan(3)
  })
})
