import { describe, expect, test } from 'vitest'
import { slips, slowChances, wearChances } from '@/find/chances.ts'
import { lastingsIn } from '@/find/lastings.ts'
import { peaksOf } from '@/find/peaks.ts'
import { needlesWith } from '@/find/practice.ts'
import type { Query } from '@/find/query.ts'
import { needleIndex, usualPlace } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { makeFault } from '@/mechanism/fault.ts'
import { at } from '@/mechanism/lookup.ts'

const peaks = peaksOf(dimensions)
const slownesses = slowChances.map(({ ms }, n) => ({ ms, n }))

/** A pass with one hole, in column 3, on a machine as new but for a slow strip 3. */
const passOver = (ms: number, speed: number): string => {
  const pass = { card: [1 << 21], row: 1, way: 1, speed, needles: '' } as const
  const query: Query = { ...usualPlace, card: pass.card, passes: [pass], slip: slips.sure, checks: [] }
  const machine = { faults: [makeFault('strip.slow', [3], ms)], wear: 0, seed: 1 }
  return needlesWith(query, machine)[0]!
}

describe('how pushes last on a slow strip', () => {
  test.each(slownesses.flatMap(({ ms, n }) => [250, 500, 900].map((speed) => ({ ms, n, speed }))))(
    'is what the model shows of a machine as new: $ms ms at $speed mm/s',
    ({ ms, n, speed }) => {
      const { cases, chances } = lastingsIn(peaks, [{ speed, early: 0 }])
      const sure = [...at(at(chances, 0), n)].findIndex((chance) => chance > 0.999)
      const letters = passOver(ms, speed)
      // The first of column 3 in the middle of the bed, and its strip's next two.
      const selected = ['R3', 'R11', 'R19'].map((name) => letters[needleIndex(name as 'R3')!] === 's')
      expect([1, 2, 4].map((bit) => (at(at(cases, sure), 0) & bit) !== 0)).toEqual(selected)
    },
  )

  test('adds up to the chance that a push suffices, at every wear and slowness', () => {
    for (const kinds of [
      [{ speed: 500, early: 0 }],
      [
        { speed: 250, early: 0 },
        { speed: 900, early: 1.5 },
      ],
    ]) {
      const { cases, chances, sufficient } = lastingsIn(peaks, kinds)
      expect(chances).toHaveLength(wearChances.length)
      expect(new Set(cases.map((one) => one.join())).size).toBe(cases.length)
      for (const [n, bySlowness] of chances.entries()) {
        expect(bySlowness).toHaveLength(slowChances.length)
        for (const all of bySlowness)
          expect(all.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(at(sufficient, n), 9)
      }
    }
  })

  test('reaches further the slower the strip and the quicker the pass', () => {
    const reached = (speed: number, n: number): number => {
      const { cases, chances } = lastingsIn(peaks, [{ speed, early: 0 }])
      return at(at(chances, 3), n).reduce(
        (sum, chance, m) => sum + chance * [2, 4].filter((bit) => (at(at(cases, m), 0) & bit) !== 0).length,
        0,
      )
    }
    for (const { n } of slownesses) {
      if (n > 0) expect(reached(500, n)).toBeGreaterThanOrEqual(reached(500, n - 1))
      expect(reached(900, n)).toBeGreaterThanOrEqual(reached(500, n))
    }
    expect(reached(900, slownesses.length - 1)).toBeGreaterThan(reached(250, 0))
  })

  test('holds no needle of its own column where the sweep comes so late that the presser is past', () => {
    const { cases } = lastingsIn(peaks, [{ speed: 500, early: -3 }])
    for (const [bits] of cases) expect(bits! & 1).toBe(0)
  })
})
