import { describe, expect, test } from 'vitest'
import { bitCount } from '@/find/bits.ts'
import { stickyChances } from '@/find/chances.ts'
import { stickyChoicesOf } from '@/find/sticky-choices.ts'

/** How likely the notes are of a pin that came up in these looks: some number of its own for each. */
const likely = (up: number): number => 1 / (1 + ((up * 7) % 11))
/** The most of those that any choice of `more` beside `up` comes to. */
const mostOf = (up: number, more: number): number => {
  let most = 0
  for (let one = more; ; one = (one - 1) & more) {
    most = Math.max(most, likely(up | one))
    if (one === 0) return most
  }
}
const shareOf = (up: number, turns: number): number =>
  stickyChances.reduce(
    (sum, { share, chance }) => sum + chance * (1 - share) ** bitCount(up) * share ** (turns - bitCount(up)),
    0,
  )
const question = { asked: 0b1101, mostChance: 0.16, least: 0, most: Infinity, mostOf }
const all = [0, 1, 4, 5, 8, 9, 12, 13]

describe('what a sticky pin may have done', () => {
  test('is each choice of the looks that asked for it, at the mean chance of all stickinesses, the likeliest first', () => {
    const found = stickyChoicesOf(question)
    expect(found.map(({ up }) => up).sort((a, b) => a - b)).toEqual(all)
    for (const { up, share, own } of found) {
      expect(share).toBeCloseTo(shareOf(up, 3), 12)
      expect(own).toBe(likely(up))
    }
    const sizes = found.map(({ share, own }) => share * own)
    expect(sizes).toEqual([...sizes].sort((one, other) => other - one))
    expect(found.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
  })

  test('leaves out what comes to less than asked for, and nothing else', () => {
    const sizeOf = (up: number): number => shareOf(up, 3) * likely(up) * question.mostChance
    const sizes = all.map(sizeOf).sort((one, other) => one - other)
    for (const least of [sizes[0]!, (sizes[2]! + sizes[3]!) / 2, sizes[7]! * 1.01])
      expect(
        stickyChoicesOf({ ...question, least })
          .map(({ up }) => up)
          .sort((a, b) => a - b),
      ).toEqual(all.filter((up) => sizeOf(up) >= least))
    // Where no choice can come to so much, not all of them are looked into.
    let asked = 0
    const counting = (up: number, more: number): number => {
      asked += 1
      return mostOf(up, more)
    }
    stickyChoicesOf({ ...question, least: 1, mostOf: counting })
    expect(asked).toBe(1)
  })

  test('has the likeliest speak for those that are too many', () => {
    const [whole, few] = [stickyChoicesOf(question), stickyChoicesOf({ ...question, most: 3 })]
    expect(few.map(({ up }) => up)).toEqual(whole.slice(0, 3).map(({ up }) => up))
    const sum = (some: typeof whole): number => some.reduce((total, { share, own }) => total + share * own, 0)
    expect(sum(few)).toBeCloseTo(sum(whole), 12)
    expect(few[0]!.share / few[1]!.share).toBeCloseTo(whole[0]!.share / whole[1]!.share, 12)
  })

  test('is nothing but not coming up where no look asked for it', () => {
    expect(stickyChoicesOf({ ...question, asked: 0 })).toEqual([
      { up: 0, share: expect.closeTo(1, 12) as number, own: 1 },
    ])
    expect(stickyChoicesOf({ ...question, mostOf: () => 0 }).every(({ own }) => own === 0)).toBe(true)
  })
})
