import { describe, expect, test } from 'vitest'
import { conditionOf } from '@/mechanism/condition.ts'
import { chanceOfSelection } from '@/mechanism/chance.ts'
import { normalDraw, type Stream } from '@/mechanism/random.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { count, machine } from '../mechanism/make.ts'

const deviation = (values: readonly number[]): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length)
}

/** How far a deviation measured on n machines may be out: four of its own deviations. */
const out = (spread: number, n: number): number => (4 * spread) / Math.sqrt(2 * n)

/** Source: published worked examples of tolerance stack-ups, recomputed. */
describe('the scatter of independent parts adds up as a root of squares, not as a worst case', () => {
  const seeds = count(1, 20_000)

  test('±0.005, 0.003, 0.002 and 0.005 make ±0.00794, where the worst case is ±0.015', () => {
    const parts: readonly (readonly [Stream, number])[] = [
      ['pin', 0.005],
      ['lost', 0.003],
      ['catch', 0.002],
      ['butt', 0.005],
    ]
    const sums = seeds.map((seed) =>
      parts.reduce((sum, [stream, part]) => sum + part * normalDraw(seed, stream, 0), 0),
    )
    expect(Math.abs(deviation(sums) - 0.00794)).toBeLessThan(out(0.00794, seeds.length))
  })

  test('ten parts of ±0.1 make ±0.316, where the worst case is ±1.0', () => {
    const sums = seeds.map((seed) =>
      count(0, 9).reduce((sum, part) => sum + 0.1 * normalDraw(seed, 'catch', part), 0),
    )
    expect(Math.abs(deviation(sums) - 0.316)).toBeLessThan(out(0.316, seeds.length) + 5e-4)
  })

  test('so do a catch’s depth and its butt’s height in a worn machine', () => {
    const wear = 1
    const gaps = count(1, 100).flatMap((seed) => {
      const { catchError, buttError } = conditionOf({ ...soundScenario(null), wear, seed })
      return [...catchError].map((error, n) => error - buttError[n]!)
    })
    const rootOfSquares = Math.sqrt(0.07 ** 2 + 0.07 ** 2)
    expect(Math.abs(deviation(gaps) - rootOfSquares)).toBeLessThan(out(rootOfSquares, gaps.length))
  })

  test('and a dip one such deviation deeper than the catch is enough for Φ(1) = 0.8413 of the needles', () => {
    // At wear 0.2: catch and butt 0.03 mm each, 0.0424 together; the presser, 1.43 mm, worn by 0.4876 dips 0.9424.
    const run = machine([0xffffff], ['presser.right.worn=0.4876'], { wear: 0.2 })
    expect(chanceOfSelection(run, 1)).toBeCloseTo(0.8413, 3)
  })
})
