import { describe, expect, test } from 'vitest'
import { frameAt } from '@/mechanism/frame.ts'
import { stripShift } from '@/mechanism/strip.ts'
import { machine } from '../mechanism/make.ts'
import { rowWith } from '../mechanism/trade.ts'
import { toStrip } from '@/mechanism/indices.ts'

/** Source: Mechanical Engineers' Handbook, vol. 2, table 6: the share 1 - e^(-t/τ) of its way that a first-order return has made. */
const shares = [
  [1, 0.632],
  [2, 0.865],
  [3, 0.95],
  [4, 0.982],
  [5, 0.993],
  [6, 0.998],
] as const

const pitch = 4.5
/** So slow, in mm/s, that a butt is up before it comes to the first gate, whose underside would keep it down. */
const speed = 50

describe('a first-order spring return', () => {
  test.each(shares)('after %i time constants of a free butt has made a share of %d', (times, share) => {
    const travel = (times * 20 * speed) / (1000 * pitch)
    const run = machine([0], ['needle.R3.stiff=20'], { speed })
    const height = frameAt(run, 1, 102 + travel).buttHeights[102]!
    expect(((height + 1.5) / 1.5).toFixed(3)).toBe(share.toFixed(3))
  })

  test('after one time constant of a strip has made 0.632 of the way to its stop and on through the preload', () => {
    // At 2000 mm/s in oil of 20 ms a strip runs freely once the sweep has gone by, and comes to its stop later than this.
    const travel = (20 * 2000) / (1000 * pitch)
    const run = machine([rowWith(3)], ['strip.3.slow=20'], { speed: 2000 })
    const { drive } = run.passOf(1)
    const shift = (past: number): number => stripShift(run.condition, drive, toStrip(3), 102.8 + past)
    expect(shift(2.2 + travel)).toBeGreaterThan(0)
    expect(((shift(2.2) - shift(2.2 + travel)) / (shift(2.2) + 0.6)).toFixed(3)).toBe('0.632')
  })
})
