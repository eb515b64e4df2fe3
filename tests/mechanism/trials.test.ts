import { describe, expect, test } from 'vitest'
import { faultOf } from '@/mechanism/read-fault.ts'
import { isChanceExact } from '@/mechanism/trials.ts'
import { tried, worn } from './tried.ts'

describe('machines tried out', () => {
  test('all select every needle as new, and none with the sweep worn away', () => {
    expect(tried(worn(0), 1, 5)).toEqual({ machines: 5, share: 1, error: 0 })
    const sweepless = worn(0, [faultOf('sweep.worn=2')])
    expect(tried(sweepless, -1, 5).share).toBe(0)
  })

  test('miss a strip’s needles where that strip is seized', () => {
    const run = worn(0, [faultOf('strip.3.seized')])
    expect(tried(run, 1, 3).share).toBeCloseTo(7 / 8, 10)
    expect(isChanceExact(run, 1)).toBe(false)
  })

  test('are the same whenever they are tried', () => {
    const run = worn(0.8)
    expect(tried(run, 1, 20)).toEqual(tried(worn(0.8), 1, 20))
  })
})
