import { describe, expect, test } from 'vitest'
import { floatLength, floatLimit, knittedRow, longestFloat, longFloats } from '@/mechanism/fabric.ts'
import { everyNeedle, machine } from '../mechanism/make.ts'

/** Source: common practice, no source. */
describe('a float over more than about 5 stitches', () => {
  // Holes for one needle in so many of each 24 columns.
  const oneIn = (columns: number): number =>
    everyNeedle.slice(0, 24).reduce((row, n) => (n % columns === 0 ? row + 2 ** n : row), 0)
  const run = (columns: number) => machine([oneIn(columns)])

  test('is long, and one over 5 is not', () => {
    expect(floatLimit).toBe(5)
    expect(longFloats(knittedRow(run(6), 2))).toEqual([])
    const [long] = longFloats(knittedRow(run(8), 2))
    expect(long && floatLength(long)).toBe(7)
  })

  test('is a warning and never an error: every needle does what the card asks', () => {
    const loose = run(24)
    const longest = longestFloat([knittedRow(loose, 2)])
    expect(longest && floatLength(longest)).toBe(23)
    for (const pass of [1, 2, 3]) {
      const { came, asked, departures } = loose.passOf(pass)
      expect(came).toEqual(asked)
      expect([...departures]).toEqual([])
    }
  })
})
