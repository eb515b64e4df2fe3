import { at } from '../mechanism/lookup.ts'

/** Random choices that follow from a seed alone: the same seed gives the same choices, for years. */
export interface Random {
  /** A whole number from `least` to `most`, both included. */
  readonly whole: (least: number, most: number) => number
  readonly pick: <T>(from: readonly T[]) => T
  readonly shuffled: <T>(from: readonly T[]) => T[]
  /** `count` of a list, in the list's own order. */
  readonly some: <T>(from: readonly T[], count: number) => T[]
}

/** The mixing step of a small counter-based generator: each state gives 32 well-spread bits. */
const mixed = (state: number): number => {
  let h = Math.imul(state ^ (state >>> 15), state | 1)
  h ^= h + Math.imul(h ^ (h >>> 7), h | 61)
  return (h ^ (h >>> 14)) >>> 0
}

/** The random choices of one question. `name` makes the choices of different makers differ for the same seed. */
export const seededRandom = (name: string, seed: number): Random => {
  let state = [...name].reduce((hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 0x01000193), seed)
  const share = (): number => mixed((state = (state + 0x6d2b79f5) | 0)) / 0x100000000
  const whole = (least: number, most: number): number => least + Math.floor(share() * (most - least + 1))
  const shuffled = <T>(from: readonly T[]): T[] => {
    const list = [...from]
    for (let n = list.length - 1; n > 0; n--) {
      const other = whole(0, n)
      ;[list[n], list[other]] = [at(list, other), at(list, n)]
    }
    return list
  }
  return {
    whole,
    shuffled,
    pick: (from) => at(from, whole(0, from.length - 1)),
    some: (from, count) => {
      const kept = new Set(shuffled(from.map((_, n) => n)).slice(0, count))
      return from.filter((_, n) => kept.has(n))
    },
  }
}

/** Far more tries than any maker needs, as the tests show. */
const tryLimit = 1000

/** The first attempt that does not give null. Throws where no attempt does. */
export const firstValid = <T>(attempt: () => T | null): T => {
  for (let n = 0; n < tryLimit; n++) {
    const found = attempt()
    if (found !== null) return found
  }
  throw new Error('no question came of so many tries')
}
