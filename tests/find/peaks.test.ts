import { describe, expect, test } from 'vitest'
import { pivotChances, wearChances } from '@/find/chances.ts'
import { certainties, chanceOfPeak, peaksOf } from '@/find/peaks.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { at } from '@/mechanism/lookup.ts'
import { normalCdf } from '@/mechanism/normal.ts'
import { wornDimensions } from '@/mechanism/wear.ts'

const peaks = peaksOf(dimensions)
/** A little worn and much worn machines, with tight and with loose pivots, by their indices in the tables. */
const cases = [2, 6, wearChances.length - 1].flatMap((n) =>
  [0, 1, 3, pivotChances.length - 1].map((m) => ({
    n,
    m,
    wear: at(wearChances, n).wear,
    mm: at(pivotChances, m).mm,
  })),
)

describe('how surely a push that suffices does so', () => {
  test.each(cases)('keeps the chance that it suffices, and its mean: wear $wear, pivots $mm mm', (one) => {
    const { wear, mm, n, m } = one
    const { reach } = wornDimensions(dimensions, wear)
    const shares = peaks.certaintyChances()[n]![m]!
    const whole = shares.reduce((sum, share) => sum + share, 0)
    expect(whole).toBeCloseTo(peaks.sufficient[n]!, 6)
    // In steps that are half of the table's own, by the middle of each.
    const width = 0.01
    let [mean, above] = [0, chanceOfPeak(dimensions, wear, reach)]
    for (let from = reach; above > 1e-9; from += width) {
      const next = chanceOfPeak(dimensions, wear, from + width)
      mean += (above - next) * (mm === 0 ? 1 : normalCdf((from + width / 2 - reach) / mm))
      above = next
    }
    const onGrid = shares.reduce((sum, share, point) => sum + share * certainties[point]!, 0)
    expect(onGrid).toBeCloseTo(mean, 3)
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0)
  })

  test('is certain where pivots are tight, and on a machine as made lies between two points of the grid', () => {
    const [asMade] = peaks.certaintyChances()
    expect([...asMade![0]!]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 1])
    for (const shares of asMade!) expect(shares.filter((share) => share > 0).length).toBeLessThanOrEqual(2)
  })
})
