import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cheapestParting, type Means } from '@/find/parting.ts'

/** The least cost of all sets of means that part whatever any of them parts, by trying every set. */
const byForce = (means: readonly Means[]): number => {
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
  .map((list) => list.map(({ cost, parts }): Means => ({ cost, parts: new Set(parts) })))

describe('the cheapest parting', () => {
  it('is as cheap as the best of all sets, and parts all that can be parted', () => {
    fc.assert(
      fc.property(someMeans, (means) => {
        const { taken, cost, isProved } = cheapestParting(means)
        const parted = new Set(taken.flatMap((n) => [...means[n]!.parts]))
        expect(isProved).toBe(true)
        expect(parted).toEqual(new Set(means.flatMap(({ parts }) => [...parts])))
        expect(cost).toBe(byForce(means))
      }),
    )
  })

  it('takes nothing where there is nothing to part', () => {
    expect(cheapestParting([{ cost: 1, parts: new Set() }])).toEqual({ taken: [], cost: 0, isProved: true })
  })
})
