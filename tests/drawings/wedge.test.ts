import { describe, expect, test } from 'vitest'
import { forwardOf, wedgeEnds, wedgeFlank } from '@/drawings/shared/wedge.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { sweepEnd, sweepWindow } from '@/mechanism/sweep.ts'

const { pitch, sweepThrow } = dimensions
const end = sweepEnd(dimensions)

describe('the wedge of the sweep, from above', () => {
  test('is as long as the model’s flat and ramps, sheared by the slots’ slant', () => {
    expect(wedgeEnds.right - wedgeEnds.left).toBeCloseTo(2 * end * pitch, 6)
    expect(wedgeEnds.flatLeft).toBeCloseTo(-dimensions.sweepFlat * pitch - sweepThrow, 6)
    expect(wedgeEnds.flatRight).toBeCloseTo(dimensions.sweepFlat * pitch - sweepThrow, 6)
  })

  test('touches a leg wherever it pushes it, and never cuts it', () => {
    const radius = dimensions.pin / 2
    const flank = wedgeFlank(radius)
    for (let past = -end; past <= end; past += 0.05) {
      const push = sweepThrow * sweepWindow(dimensions, past)
      const [right, front] = [-past * pitch - push, forwardOf(push)]
      const nearest = Math.min(...flank.map((point) => Math.hypot(point.right - right, point.front - front)))
      expect(nearest).toBeGreaterThan(radius - 0.03)
      expect(nearest).toBeLessThan(radius + 0.12)
    }
  })
})
