import { describe, expect, test } from 'vitest'
import { normalCdf } from '@/mechanism/normal.ts'

describe('the normal tail', () => {
  // Source: z tables.
  test.each([
    [-3, 0.00135, 5],
    [-2.5, 0.00621, 5],
    [1.288, 0.901127, 6],
  ])('Φ(%d) is %d', (z, tail, places) => {
    expect(normalCdf(z).toFixed(places)).toBe(tail.toFixed(places))
  })

  // Source: NIST/SEMATECH e-Handbook of Statistical Methods, from memory.
  test.each([
    [1.96, 0.475],
    [3, 0.49865],
  ])('from 0 to %d the area is %d', (z, area) => {
    expect((normalCdf(z) - normalCdf(0)).toFixed(5)).toBe(area.toFixed(5))
  })
})
