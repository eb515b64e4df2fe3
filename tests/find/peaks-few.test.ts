import { describe, expect, test } from 'vitest'
import { pivotChances, wearChances } from '@/find/chances.ts'
import { certainties, chanceOfPeak, peaksOf } from '@/find/peaks.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { normalCdf } from '@/mechanism/normal.ts'
import { scatter, wornDimensions } from '@/mechanism/wear.ts'

const peaks = peaksOf(dimensions)
const { ratio, sweepThrow, fullBite, pinHigh } = dimensions

/** The same by small steps over how high the pin comes and how much is lost, in a thousand of each. */
const byHand = (wear: number, shift: number): number => {
  const { sweepEdge, lost } = wornDimensions(dimensions, wear)
  const { pin, lost: spread } = scatter(wear)
  const steps = 800
  const points = Array.from({ length: steps }, (_, n) => -6 + (12 * (n + 0.5)) / steps)
  const weigh = (z: number): number => (Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI)) * (12 / steps)
  return points.reduce((sum, z) => {
    const bite = Math.min(1, Math.max(0, (pinHigh + z * pin - sweepEdge) / fullBite))
    const push = ratio * sweepThrow * bite
    // Lost motion takes nothing of a push that does not come so far by itself.
    return push < shift ? sum : sum + weigh(z) * normalCdf((push - lost - shift) / spread)
  }, 0)
}

describe('the chance that a push shifts its strip so far', () => {
  test.each([
    [0.1, 1.2],
    [0.5, 1.2],
    [0.8, 1.3],
    [0.9, 1.0],
    [1, 0.4],
    [1, 1.3],
  ])('is that over all heights of pins and lost motions: wear %d, %d mm', (wear, shift) => {
    expect(chanceOfPeak(dimensions, wear, shift)).toBeCloseTo(byHand(wear, shift), 3)
  })

  test('is certain or nothing on a machine as made', () => {
    const asMade = ratio * sweepThrow - dimensions.lost
    expect(chanceOfPeak(dimensions, 0, asMade)).toBe(1)
    expect(chanceOfPeak(dimensions, 0, asMade - 1e-9)).toBe(1)
    expect(chanceOfPeak(dimensions, 0, asMade + 1e-9)).toBe(0)
    // A pin that does not reach the sweep is not pushed, and one that does so by half only half as far.
    expect(chanceOfPeak({ ...dimensions, pinHigh: dimensions.sweepEdge - 0.1 }, 0, 0.1)).toBe(0)
    const half = { ...dimensions, pinHigh: dimensions.sweepEdge + fullBite / 2 }
    expect(chanceOfPeak(half, 0, (ratio * sweepThrow) / 2 - dimensions.lost - 1e-9)).toBe(1)
    expect(chanceOfPeak(half, 0, (ratio * sweepThrow) / 2 - dimensions.lost + 1e-9)).toBe(0)
  })

  test('is whole for no shift, and less the farther', () => {
    for (const { wear } of wearChances.slice(1)) {
      const chances = [0.2, 0.6, 1, 1.4, 1.8].map((shift) => chanceOfPeak(dimensions, wear, shift))
      expect(chances).toEqual([...chances].sort((one, other) => other - one))
      expect(chances[0]).toBeLessThanOrEqual(1 + 1e-9)
    }
    expect(chanceOfPeak(dimensions, 0.1, 0.2)).toBeCloseTo(1, 6)
  })
})

describe('how surely pushes suffice on a machine as made', () => {
  const surely = (mm: number): number =>
    normalCdf((ratio * sweepThrow - dimensions.lost - dimensions.reach) / mm)

  test('is shared by the two points of the grid beside it', () => {
    for (const [n, { mm }] of pivotChances.entries()) {
      if (mm === 0) continue
      const shares = [...peaks.certaintyChances()[0]![n]!]
      const mean = shares.reduce((sum, share, m) => sum + share * certainties[m]!, 0)
      expect(mean).toBeCloseTo(surely(mm), 12)
      const used = certainties.filter((_, m) => shares[m]! > 0)
      expect(Math.min(...used)).toBeLessThanOrEqual(surely(mm))
      expect(Math.max(...used)).toBeGreaterThanOrEqual(surely(mm))
      const nearest = certainties.map((one) => Math.abs(one - surely(mm)))
      expect(peaks.meanCertainty(0, n)).toBe(nearest.indexOf(Math.min(...nearest)))
    }
    expect(peaks.meanCertainty(0, 0)).toBe(certainties.length - 1)
  })

  test('is none where no push suffices, and then counts as sure', () => {
    const weak = peaksOf({ ...dimensions, sweepThrow: 0.3 })
    expect(weak.sufficient[0]).toBe(0)
    expect(weak.certaintyChances()[0]!.every((shares) => shares.every((share) => share === 0))).toBe(true)
    expect(weak.meanCertainty(0, 3)).toBe(certainties.length - 1)
  })

  test('has the point nearest to the mean of those that suffice, however worn', () => {
    for (const wear of [3, 8, 14])
      for (const n of [1, 4, 6]) {
        const shares = [...peaks.certaintyChances()[wear]![n]!]
        const whole = shares.reduce((sum, one) => sum + one, 0)
        const mean = shares.reduce((sum, share, m) => sum + share * certainties[m]!, 0) / whole
        const apart = certainties.map((one) => Math.abs(one - mean))
        expect(peaks.meanCertainty(wear, n)).toBe(apart.lastIndexOf(Math.min(...apart)))
      }
  })
})
