import cdf from '@stdlib/stats-base-dists-normal-cdf'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { normalCdf } from '@/mechanism/normal.ts'
import { check } from './check.ts'

describe('the normal distribution’s lower tail', () => {
  test('agrees with another library to a relative 1e-9 from the far lower tail to the middle', () => {
    check(
      fc.property(fc.double({ min: -37, max: 0, noNaN: true }), (z) => {
        expect(Math.abs(normalCdf(z) / cdf(z, 0, 1) - 1)).toBeLessThan(1e-9)
      }),
      2000,
    )
  })

  test('agrees to 1e-14 above the middle', () => {
    check(
      fc.property(fc.double({ min: 0, max: 50, noNaN: true }), (z) => {
        expect(Math.abs(normalCdf(z) - cdf(z, 0, 1))).toBeLessThan(1e-14)
      }),
      1000,
    )
  })

  test('has no seam where its two forms meet, at 3 deviations', () => {
    for (const z of [-3 - 1e-9, -3, -3 + 1e-9])
      expect(Math.abs(normalCdf(z) / cdf(z, 0, 1) - 1)).toBeLessThan(1e-11)
  })

  test('is one half in the middle, 0 and 1 at the ends', () => {
    expect(normalCdf(0)).toBe(0.5)
    expect(normalCdf(-Infinity)).toBe(0)
    expect(normalCdf(Infinity)).toBe(1)
    expect(normalCdf(-60)).toBe(0)
  })

  test('never falls, and what is below z and above it makes one', () => {
    const deviations = fc.double({ min: -40, max: 40, noNaN: true })
    check(
      fc.property(deviations, deviations, (one, other) => {
        expect(normalCdf(Math.min(one, other))).toBeLessThanOrEqual(normalCdf(Math.max(one, other)))
        expect(normalCdf(one) + normalCdf(-one)).toBeCloseTo(1, 14)
      }),
      300,
    )
  })
})
