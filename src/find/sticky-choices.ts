import { stickyChances } from './chances.ts'
import { bitCount } from './bits.ts'

/** The chance that a sticky pin, however sticky, comes up in just so many of some turns. */
const chanceOfUps = (ups: number, turns: number): number =>
  stickyChances.reduce(
    (sum, { chance, share }) => sum + chance * (1 - share) ** ups * share ** (turns - ups),
    0,
  )

/** What a sticky pin on a slow strip may have done. */
interface StickyChoice {
  /** The looks in which it came up, a bit a look. */
  readonly up: number
  /** How likely that is, with what is left out and this one speaks for. */
  readonly share: number
  /** The most that the notes of its own needles can be likely then. */
  readonly own: number
}

/** What choices are asked for. */
interface StickyQuestion {
  /** The looks in which the card lets it up. */
  readonly asked: number
  /** The chance that the pin is sticky, by the reader that suits it best. */
  readonly mostChance: number
  /** Choices that come to less are left out. */
  readonly least: number
  /** Of those that are left at most so many, the likeliest, are given; they speak for the others. */
  readonly most: number
  /** The most that the notes can be likely where it was up in these looks, and perhaps in some of `more`. */
  readonly mostOf: (up: number, more: number) => number
}

/** What a sticky pin may have done in the looks that ask for it, the likeliest first. */
export const stickyChoicesOf = ({
  asked,
  mostChance,
  least,
  most,
  mostOf,
}: StickyQuestion): StickyChoice[] => {
  const turns = bitCount(asked)
  const choices: StickyChoice[] = []
  /** Takes every choice of the looks left beside those chosen, but for those that come to too little whatever is left. */
  const choose = (up: number, left: number): void => {
    const own = mostOf(up, left)
    if (left === 0) {
      const share = chanceOfUps(bitCount(up), turns)
      if (own * share * mostChance >= least) choices.push({ up, share, own })
      return
    }
    if (own * mostChance < least) return
    const bit = left & -left
    choose(up, left & ~bit)
    choose(up | bit, left & ~bit)
  }
  choose(0, asked)
  const sizeOf = ({ share, own }: StickyChoice): number => share * own
  choices.sort((one, other) => sizeOf(other) - sizeOf(one))
  const kept = choices.slice(0, most)
  const sum = (some: readonly StickyChoice[]): number => some.reduce((total, one) => total + sizeOf(one), 0)
  const [all, looked] = [sum(choices), sum(kept)]
  const scale = looked > 0 ? all / looked : 1
  return kept.map((one) => ({ ...one, share: one.share * scale }))
}
