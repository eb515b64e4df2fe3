import { describe, expect, test } from 'vitest'
import fc from 'fast-check'
import { dimensions } from '@/mechanism/dimensions.ts'
import { conditionOf } from '@/mechanism/condition.ts'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { oilOf, sharedOil, withOil } from '@/mechanism/oil.ts'
import { soundScenario } from '@/mechanism/scenario.ts'

const seized: Fault = faultOf('strip.3.seized')
const pin: Fault = faultOf('pin.5.low')
const slow = (strip: number, amount: number): Fault => makeFault('strip.slow', [strip], amount)

describe('oil on every strip', () => {
  test('is fresh on a sound machine', () => {
    expect(oilOf([], dimensions.stripReturn)).toBe(dimensions.stripReturn)
    expect(sharedOil([])).toEqual([])
  })

  test('thickens every strip that can move, and gives that thickness back', () => {
    fc.assert(
      fc.property(fc.integer({ min: dimensions.stripReturn + 1, max: 5000 }), fc.boolean(), (ms, stuck) => {
        const before = stuck ? [seized, pin] : [pin]
        const faults = withOil(before, ms, dimensions.stripReturn)
        expect(oilOf(faults, dimensions.stripReturn)).toBe(ms)
        const { stripReturn } = conditionOf({ ...soundScenario(null), faults })
        expect([...stripReturn]).toEqual(
          [1, 2, 3, 4, 5, 6, 7, 8].map((strip) => (stuck && strip === 3 ? dimensions.stripReturn : ms)),
        )
        expect(withOil(faults, dimensions.stripReturn, dimensions.stripReturn)).toEqual(before)
        expect(sharedOil(faults)).toHaveLength(stuck ? 7 : 8)
      }),
    )
  })

  test('is that of the quickest strip where one alone is slow', () => {
    expect(oilOf([slow(4, 300)], dimensions.stripReturn)).toBe(dimensions.stripReturn)
    expect(sharedOil([slow(4, 300)])).toEqual([])
    const mixed = [...withOil([], 120, dimensions.stripReturn).slice(1), slow(1, 300)]
    expect(oilOf(mixed, dimensions.stripReturn)).toBe(120)
    expect(sharedOil(mixed)).toEqual([])
  })

  test('takes the place of the oil that a strip had', () => {
    expect(withOil([slow(4, 300)], 50, dimensions.stripReturn)).toHaveLength(8)
  })
})
