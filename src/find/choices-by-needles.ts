import { indicesOf } from './bits.ts'
import type { FollowerValues } from './follower-values.ts'
import { type NeedleSums, placeOnStrip } from './needle-sums.ts'

/** A term of a needle: what each look multiplies it with, what it begins with, and the most that it can come to. */
interface Term {
  readonly weight: number
  readonly most: number
  readonly factors: Float64Array | null
  readonly from: number
}

/** The terms of a needle that some of these looks may be offered to, the one that may come to most first. */
const termsOf = (sums: NeedleSums, needle: number, forced: number, looks: readonly number[]): Term[] => {
  const slot = placeOnStrip(needle)
  const from = slot * sums.looks
  const term = (start: number, factors: Float64Array): Term => {
    const weight = indicesOf(forced).reduce((product, look) => product * factors[from + look]!, start)
    const most = looks.reduce((product, look) => product * Math.max(1, factors[from + look]!), weight)
    return { weight, most, factors, from }
  }
  const deaf = sums.deaf[slot]!
  const terms: Term[] = [
    term(sums.hears[slot]!, sums.factors),
    ...(sums.stiffHears ? [term(sums.stiff[slot]!, sums.stiffFactors)] : []),
    { weight: deaf, most: deaf, factors: null, from },
  ]
  return terms.sort((one, other) => other.most - one.most)
}

/** A product of terms that can't come to such a share of the sum so far is left out, and all smaller ones. */
const leastTerm = 1e-14

/**
 * Sum over every choice of looks out of `choices` beside those of `base`, each offered with the chance `share`: over which
 * needles follow, which are fewer choices where there are many looks.
 */
export const byNeedles = (
  { sums, followers: { needles, forced } }: FollowerValues,
  choices: number,
  share: number,
  base: number,
): number => {
  const looks = indicesOf(choices)
  const count = looks.length
  const terms = needles.map((needle, n) => termsOf(sums, needle, forced[n]! | base, looks))
  /** By needle: the most that it and those after it can come to. */
  const mostLeft = new Float64Array(needles.length + 1).fill(1)
  for (let n = needles.length - 1; n >= 0; n--) mostLeft[n] = mostLeft[n + 1]! * terms[n]![0]!.most
  const products = new Float64Array((needles.length + 1) * count).fill(1)
  let sum = 0
  const go = (depth: number, weight: number, most: number): void => {
    const own = depth * count
    if (depth === needles.length) {
      let product = weight
      for (let n = 0; n < count; n++) product *= 1 - share + share * products[own + n]!
      sum += product
      return
    }
    const next = own + count
    for (const { weight: begins, most: ownMost, factors, from } of terms[depth]!) {
      if (most * ownMost * mostLeft[depth + 1]! <= leastTerm * sum) return
      for (let n = 0; n < count; n++) {
        const look = looks[n]!
        const isFree = factors !== null && (forced[depth]! & (1 << look)) === 0
        products[next + n] = products[own + n]! * (isFree ? factors[from + look]! : 1)
      }
      go(depth + 1, weight * begins, most * ownMost)
    }
  }
  go(0, 1, 1)
  return sum
}
