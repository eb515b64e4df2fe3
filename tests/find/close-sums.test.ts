import { describe, expect, test } from 'vitest'
import { type SmallLook, summed, told } from './one-strip.ts'

/** Wears by their indices in the table: as new, a little worn, and much. */
const wears = [0, 3, 8]

const noted: readonly (readonly [string, readonly SmallLook[]])[] = [
  [
    'all right',
    [
      [1, 500, 'ssssss'],
      [2, 500, 'pppppp'],
    ],
  ],
  [
    'one column missed once',
    [
      [1, 500, 'psspss'],
      [1, 900, 'ssssss'],
    ],
  ],
  [
    'ghosts, and a column that misses',
    [
      [3, 900, 'sspssp'],
      [1, 500, 'spsspu'],
    ],
  ],
  [
    'two columns miss at times',
    [
      [1, 900, 'pspssp'],
      [1, 900, 'spsssp'],
    ],
  ],
  [
    'one column always',
    [
      [2, 900, 'spsspp'],
      [4, 900, 'sppsps'],
    ],
  ],
  ['nothing selected', [[1, 500, 'pppppp']]],
  ['everything selected', [[2, 900, 'ssssss']]],
]

// Close sums leave out what is slight, and whole ones nothing.
describe('the close sums of a strip', () => {
  test.each(noted)('are nearly those of every combination: %s', (_, looks) => {
    const [close, whole] = [summed(looks, 'firm', wears), summed(looks, 'whole', wears)]
    const [one, other] = [close.sums.strips[2]!, whole.sums.strips[2]!]
    expect(one.seized).toBe(other.seized)
    expect(one.over).toBe(other.over)
    expect(one.log).toBe(other.log)
    // Where pins must be up that the card keeps down, two rare things at once are much of the little there is.
    const slight = looks.some(([pass, , letters]) => pass % 2 === 0 && letters.includes('s')) ? 0.6 : 0.08
    const most = Math.max(...other.fast, ...other.slow, other.seized, other.over)
    for (const [h, fast] of other.fast.entries()) {
      expect(Math.abs(one.fast[h]! - fast)).toBeLessThan(1e-5 * most + 1e-3 * fast)
      // Two rare things on one slow strip are left out, and of sticky pins the likeliest speak for the others.
      expect(Math.abs(one.slow[h]! - other.slow[h]!)).toBeLessThan(slight * other.slow[h]! + 1e-4 * most)
    }
    expect(Math.abs(close.log - whole.log)).toBeLessThan(0.07)
  })

  test.each(noted.slice(1, 6))('say of places nearly what those do: %s', (_, looks) => {
    const [close, whole] = [told(summed(looks, 'firm', [0])), told(summed(looks, 'whole', [0]))]
    for (const [key, weight] of whole.tally)
      expect([key, Math.abs((close.tally.get(key) ?? 0) - weight) < 1e-2]).toEqual([key, true])
  })

  test.each(noted.slice(0, 5))(
    'with loose pivots are those of firm ones where they are firm: %s',
    (_, looks) => {
      const [loose, firm] = [summed(looks, 'loose', [3]), summed(looks, 'firm', [3])]
      const [one, other] = [loose.sums.strips[2]!, firm.sums.strips[2]!]
      for (const [h, { pivots, reader }] of loose.sums.hidden.entries()) {
        if (pivots !== 0) continue
        const n = firm.sums.hidden.findIndex((hidden) => hidden.reader === reader)
        expect(one.fast[h]).toBeCloseTo(other.fast[n]!, 12)
        expect(one.slow[h]).toBeCloseTo(other.slow[n]!, 12)
      }
    },
  )

  test('with loose pivots make a column that misses at times likelier', () => {
    const of = (looks: readonly SmallLook[]): number[] => {
      const { sums } = summed(looks, 'loose', [3])
      return sums.hidden.flatMap(({ reader }, h) => (reader === 0 ? sums.strips[2]!.fast[h]! : []))
    }
    const steady = of([
      [1, 900, 'ssssss'],
      [1, 900, 'ssssss'],
    ])
    const rattling = of([
      [1, 900, 'psssss'],
      [1, 900, 'sspsss'],
    ])
    expect(steady[0]).toBe(Math.max(...steady))
    expect(rattling.at(-1)! / rattling[0]!).toBeGreaterThan(steady.at(-1)! / steady[0]!)
  })
})
