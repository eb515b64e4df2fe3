import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cheapestCover, type CoverSet } from '@/find/set-cover.ts'

/** The least cost of all sets of means that part whatever any of them parts, by trying every set. */
const byForce = (means: readonly CoverSet[]): number => {
  const all = new Set(means.flatMap(({ parts }) => [...parts]))
  const costs = Array.from({ length: 1 << means.length }, (_, set) => {
    const taken = means.filter((_means, n) => (set >> n) & 1)
    const parted = new Set(taken.flatMap(({ parts }) => [...parts]))
    return parted.size === all.size ? taken.reduce((sum, { cost }) => sum + cost, 0) : Infinity
  })
  return Math.min(...costs)
}

const someMeans = fc
  .array(fc.record({ cost: fc.integer({ min: 1, max: 9 }), parts: fc.uniqueArray(fc.nat(7)) }), {
    maxLength: 9,
  })
  .map((list) => list.map(({ cost, parts }): CoverSet => ({ cost, parts: new Set(parts) })))

describe('the cheapest parting', () => {
  test('is as cheap as the best of all sets, and parts all that can be parted', () => {
    fc.assert(
      fc.property(someMeans, (means) => {
        const { taken, cost, isProved } = cheapestCover(means)
        const parted = new Set(taken.flatMap((n) => [...means[n]!.parts]))
        expect(isProved).toBe(true)
        expect(parted).toEqual(new Set(means.flatMap(({ parts }) => [...parts])))
        expect(cost).toBe(byForce(means))
      }),
    )
  })

  test('takes nothing where there is nothing to part', () => {
    expect(cheapestCover([{ cost: 1, parts: new Set() }])).toEqual({ taken: [], cost: 0, isProved: true })
  })
})

describe('the search for the cheapest parting', () => {
  const means = (...list: readonly (readonly [number, ...number[]])[]) =>
    list.map(([cost, ...parts]) => ({ cost, parts: new Set(parts) }))

  test('takes what parts all at once where that is cheaper, and several where those are', () => {
    expect(cheapestCover(means([3, 1, 2], [1, 1], [1, 2]))).toEqual({
      taken: [1, 2],
      cost: 2,
      isProved: true,
    })
    expect(cheapestCover(means([1.5, 1, 2], [1, 1], [1, 2]))).toEqual({
      taken: [0],
      cost: 1.5,
      isProved: true,
    })
  })

  test('of equals takes the one named first', () => {
    expect(cheapestCover(means([1, 1], [1, 1])).taken).toEqual([0])
    expect(cheapestCover(means([2, 1], [1, 1])).taken).toEqual([1])
  })

  test('goes on to what is dearer at first where it comes cheaper in the end', () => {
    expect(cheapestCover(means([1, 1], [2, 1, 2], [5, 2, 3], [1, 3]))).toEqual({
      taken: [1, 3],
      cost: 3,
      isProved: true,
    })
  })

  test('of sets that cost the same takes the one that begins with the cheapest means', () => {
    expect(cheapestCover(means([3, 1, 2], [1, 1], [2, 2])).taken).toEqual([1, 2])
  })

  test('begins with the thing that the fewest means part, and so has less to try', () => {
    // Twelve things with twenty means each, and one thing that a single means parts, which parts all others too.
    const things = Array.from({ length: 12 }, (_, n) => n)
    const own = things.flatMap((thing) => Array.from({ length: 20 }, () => [1, thing] as const))
    expect(cheapestCover(means(...own, [10, ...things, 12]))).toEqual({
      taken: [240],
      cost: 10,
      isProved: true,
    })
  })

  test('says that it is not proved where there is too much to try', () => {
    // Sets of three of 45 things, each as dear as the others: no bound cuts the search short.
    let state = 3
    const next = (): number => (state = (state * 1103515245 + 12345) % 2147483648)
    const many = Array.from({ length: 90 }, () => ({
      cost: 1 + (next() % 7) / 100,
      parts: new Set(Array.from({ length: 3 }, () => Math.floor(next() / 65536) % 45)),
    }))
    const { taken, cost, isProved } = cheapestCover(many)
    expect(isProved).toBe(false)
    expect(new Set(taken.flatMap((n) => [...many[n]!.parts]))).toEqual(
      new Set(many.flatMap(({ parts }) => [...parts])),
    )
    expect(cost).toBeCloseTo(
      taken.reduce((sum, n) => sum + many[n]!.cost, 0),
      9,
    )
  })
})
