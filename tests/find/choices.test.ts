import { describe, expect, test } from 'vitest'
import { machinesOf } from '@/commands/bench/machine.ts'
import { queryOf } from '@/commands/bench/notes.ts'
import { bedsOf } from '@/commands/bench/truth.ts'
import { bitCount } from '@/find/bits.ts'
import { sumOfChoices } from '@/find/choices.ts'
import { type FollowerValues, valuesOf } from '@/find/follower-values.ts'
import { followersOf, frameOf, notedStripOf } from '@/find/frame.ts'
import { looksOf } from '@/find/looks.ts'
import { needleValue, placeOnStrip } from '@/find/needle-sums.ts'
import type { Query } from '@/find/query.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { rightBed } from '@/find/wide-states.ts'
import { at } from '@/mechanism/lookup.ts'

/** Gummed pins, seen in eight passes or, each of them twice, in sixteen. */
const query = ((machine) => queryOf(machine, bedsOf(machine)))(at(machinesOf(3, 4), 3))
const eight: Query = { ...query, passes: query.passes.slice(0, 8) }
const sixteen: Query = { ...query, passes: [...eight.passes, ...eight.passes] }

/** The values of a column's needles; some pins of its strip stay pushed over (bits). */
const valuesIn = (asked: Query, column: number, over: number): FollowerValues => {
  const looks = looksOf(asked)
  const frame = frameOf(sumSettingOf(asked, looks), wideBedOf(rightBed, looks), -1)
  return valuesOf(notedStripOf(frame, column % 8, 1, 1).needles, followersOf(frame, column, over))
}

/** Needle by needle, without anything kept. */
const plainly = ({ sums, followers: { needles, forced } }: FollowerValues, offered: number): number =>
  needles.reduce(
    (product, needle, n) => product * needleValue(sums, placeOnStrip(needle), offered | forced[n]!),
    1,
  )

const sumPlainly = (values: FollowerValues, choices: number, share: number): number => {
  const count = bitCount(choices)
  let sum = 0
  for (let chosen = choices; ; chosen = (chosen - 1) & choices) {
    const chance = share ** bitCount(chosen) * (1 - share) ** (count - bitCount(chosen))
    sum += chance * plainly(values, chosen)
    if (chosen === 0) return sum
  }
}

describe('the values of a column’s needles', () => {
  test.each([
    ['eight passes', eight, 0],
    ['eight passes, beside a pin that stays pushed over', eight, 6],
    ['sixteen passes', sixteen, 0],
  ] as const)('are the same however often they were asked for: %s', (_, asked, over) => {
    const values = valuesIn(asked, 4, over)
    for (let time = 0; time < 3; time++)
      for (let offered = 0; offered < 256; offered++)
        expect(values.of(offered)).toBe(plainly(values, offered & values.showing))
  })
})

describe('the sum over every choice of looks', () => {
  test.each([
    ['by looks', eight, 0xff, 0],
    ['by looks, beside a pin that stays pushed over', eight, 0xff, 6],
    ['by needles, which are fewer', sixteen, 0xffff, 0],
    ['by needles, beside a pin that stays pushed over', sixteen, 0xffff, 6],
  ] as const)('is that of each choice, summed %s', (_, asked, choices, over) => {
    for (const column of [4, 12, 20]) {
      const values = valuesIn(asked, column, over)
      for (const share of [0.25, 0.5, 0.75]) {
        const sum = sumPlainly(values, choices, share)
        expect(sum).toBeGreaterThan(0)
        expect(sumOfChoices(values, choices, share) / sum).toBeCloseTo(1, 11)
      }
    }
  })
})
