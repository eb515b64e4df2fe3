import { describe, expect, test } from 'vitest'
import { columnChances, readers, retainerMs, slowChances, wearChances } from '@/find/chances.ts'
import { frameOf, notedStripOf, stripColumns } from '@/find/frame.ts'
import { weighingOf } from '@/find/hidden.ts'
import { logSum } from '@/find/log-sum.ts'
import { looksOf } from '@/find/looks.ts'
import { needleValue, placeOnStrip } from '@/find/needle-sums.ts'
import { type RoughBed, roughLogOf } from '@/find/rough-sums.ts'
import { roughHidden, roughSlowOf } from '@/find/rough-slow.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { soundColumn, stripValue } from '@/find/strip-sums.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { rightBed } from '@/find/wide-states.ts'
import { at } from '@/mechanism/lookup.ts'
import { queryOf, type SmallLook, summed } from './one-strip.ts'

const bedOf = (looks: readonly SmallLook[]) => {
  const query = queryOf(looks)
  const all = looksOf(query)
  return { setting: sumSettingOf(query, all), bed: wideBedOf(rightBed, all) }
}

const noted: readonly (readonly [string, readonly SmallLook[]])[] = [
  ['one column missed', [[1, 900, 'psspss']]],
  [
    'ghosts',
    [
      [3, 900, 'sspssp'],
      [4, 500, 'pppppp'],
    ],
  ],
  [
    'both ways',
    [
      [1, 900, 'spsspu'],
      [4, 900, 'spppsp'],
    ],
  ],
]

/** What a column of a slow strip may do, with the looks in which it holds its own needles, the next, and the next but one. */
interface Way {
  readonly chance: number
  readonly isStill: boolean
  readonly own: number
  readonly once: number
  readonly twice: number
}

describe('the rough sum of a slow strip', () => {
  test.each(noted)(
    'is that of each of its columns still, or pushing in each way there is: %s',
    (_, looks) => {
      const { setting, bed } = bedOf(looks)
      const strip = notedStripOf(frameOf(setting, bed, -1), 2, 1, 1)
      const slow = roughSlowOf(strip, 2)
      const { cases, right } = bed.spans
      const columns = stripColumns(2)
      const held = columns.map((column) => strip.frame.layout.followers[column]!.needles)
      /** A column's needles, by the looks in which they are offered a hold. */
      const likely = (n: number, offered: number): number =>
        held[n]!.reduce(
          (product, needle) => product * needleValue(strip.needles, placeOnStrip(needle), offered),
          1,
        )
      for (const [h, { wear, reader }] of roughHidden.entries()) {
        const name = at(readers, reader)
        const sound = soundColumn(name)
        const still = columnChances[name].dead + (1 - bed.peaks.sufficient[wear]!) * sound
        const expected = slowChances.reduce((all, { chance: slowness }, ms) => {
          const ways = columns.map((column): Way[] => [
            { chance: still, isStill: true, own: 0, once: 0, twice: 0 },
            ...cases.map(([own, once, twice, thrice], n) => ({
              chance: sound * bed.lastings.chances[wear]![ms]![n]!,
              isStill: false,
              own: bed.pushed[column]! & (own | thrice),
              once: bed.pushed[column]! & once,
              twice: bed.pushed[column]! & twice,
            })),
          ])
          let sum = 0
          for (const a of ways[0]!)
            for (const b of ways[1]!)
              for (const c of ways[2]!) {
                const each = [a, b, c]
                if (each.every(({ isStill }) => isStill)) continue
                const offers = each.map(({ own }, m) => {
                  const [before, after] = [each[(m + 2) % 3]!, each[(m + 1) % 3]!]
                  // Going right, a push lasts for the column 8 on to the right; going left, for the one to the left.
                  return own | ((before.once | after.twice) & right) | ((after.once | before.twice) & ~right)
                })
                sum +=
                  a.chance *
                  b.chance *
                  c.chance *
                  offers.reduce((product, one, m) => product * likely(m, one), 1)
              }
          return all + slowness * sum
        }, 0)
        expect([h, slow[h]! / expected]).toEqual([h, expect.closeTo(1, 9)])
      }
    },
  )
})

describe('the rough sum of a bed', () => {
  const rough = (looks: readonly SmallLook[], retainer = -1): RoughBed => ({
    ...bedOf(looks),
    retainer,
    certainty: 1,
  })

  test.each(noted)('is near the close one: %s', (_, looks) => {
    const wears = [...new Set(roughHidden.map(({ wear }) => wear))]
    const { log } = roughLogOf(rough(looks), -Infinity)!
    expect(log).toBeLessThan(0)
    expect(Math.abs(log - summed(looks, 'firm', wears).log)).toBeLessThan(0.7)
  })

  test.each(noted)('is left out where it is below what is asked for, and only there: %s', (_, looks) => {
    const { log, worn } = roughLogOf(rough(looks), -Infinity)!
    expect(roughLogOf(rough(looks), log - 1e-6)).toEqual({ log, worn })
    expect(roughLogOf(rough(looks), log + 1e-6)).toBeNull()
    expect(roughLogOf(rough(looks), log + 50)).toBeNull()
    expect(worn).toBeLessThan(log)
  })

  test('is the same whatever was asked for before', () => {
    const [[, looks]] = noted as [(typeof noted)[number]]
    const other: SmallLook[] = [[1, 900, 'sspssu']]
    expect(roughLogOf(rough(other), 100)).toBeNull()
    const first = roughLogOf(rough(other), -Infinity)!
    expect(roughLogOf(rough(looks), -Infinity)!.log).not.toBeCloseTo(first.log, 3)
    expect(roughLogOf(rough(other), -Infinity)).toEqual(first)
    expect(roughLogOf(rough(other, 3), -Infinity)!.log).not.toBeCloseTo(first.log, 3)
  })

  test('is that of chances alone where nothing was noted', () => {
    const blank = rough([[1, 500, '']])
    const wears = [...new Set(roughHidden.map(({ wear }) => wear))].map((n) => wearChances[n]!.chance)
    const strips = Array.from({ length: 8 }, () => roughStrip(blank))
    const { logs } = weighingOf(blank.setting.byHand, -1, roughHidden, strips)
    expect(roughLogOf(blank, -Infinity)!.log).toBeCloseTo(logSum(logs), 9)
    expect(logSum(logs)).toBeLessThan(Math.log(wears.reduce((sum, one) => sum + one, 0)))
    expect(retainerMs.length).toBe(8)
  })
})

/** The rough sums of a strip of which nothing was noted: each state of its columns at its chance. */
const roughStrip = ({ setting, bed }: RoughBed) => {
  const noted = notedStripOf(frameOf(setting, bed, -1), 0, 1, 1)
  const ofColumn = roughHidden.map(({ wear, reader }) => {
    const { over, other } = columnChances[at(readers, reader)]
    // A pin that would stay pushed over does nothing where its pushes do not suffice.
    return 1 - other - over * bed.peaks.sufficient[wear]!
  })
  const value = stripValue(noted, 0, 0)
  const slowColumn = roughHidden.map(({ wear, reader }) => {
    const sound = soundColumn(at(readers, reader))
    const suffices = bed.peaks.sufficient[wear]!
    const { dead } = columnChances[at(readers, reader)]
    const still = dead + (1 - suffices) * sound
    return { all: still + sound * suffices, still }
  })
  return {
    log: noted.needles.log,
    seized: value,
    over: value,
    fast: Float64Array.from(ofColumn, (one) => value * one ** 3),
    slow: Float64Array.from(slowColumn, ({ all, still }) => value * (all ** 3 - still ** 3)),
  }
}
