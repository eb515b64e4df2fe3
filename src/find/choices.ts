import { bitCount } from './bits.ts'
import { byNeedles } from './choices-by-needles.ts'
import type { FollowerValues } from './follower-values.ts'

/** Above so many looks to choose from, the sum goes over which needles follow instead of over which looks are offered. */
const mostChoices = 10

/** Sum over every choice of looks out of `choices` beside those of `base`, each offered with the chance `share`. */
export const sumOfChoices = (values: FollowerValues, choices: number, share: number, base = 0): number => {
  const looks = choices & values.showing & ~base
  return bitCount(looks) <= mostChoices
    ? byLooks(values, looks, share, base)
    : byNeedles(values, looks, share, base)
}

/** By choice of looks, the first of them the lowest bit. */
const gathered = new Float64Array(1 << mostChoices)

const byLooks = (values: FollowerValues, looks: number, share: number, base: number): number => {
  let count = 0
  let chosen = 0
  do {
    gathered[count++] = values.of(base | chosen)
    chosen = (chosen - looks) & looks
  } while (chosen !== 0)
  // The last look is summed over, then the one before it, until the first.
  for (let half = count >> 1; half >= 1; half >>= 1)
    for (let n = 0; n < half; n++) gathered[n] = (1 - share) * gathered[n]! + share * gathered[half + n]!
  return gathered[0]!
}

/** Choices of looks, each with its chance; the unlikely are left out. */
export type Choices = readonly { readonly offered: number; readonly chance: number }[]

/** A choice with less than this share of all is left out. */
const leastShare = 1e-2

/**
 * How likely each choice of looks out of `choices` was, each offered with the chance `share`, for what was noted of needles;
 * looks that show nothing are left out.
 */
export const choicesOf = (values: FollowerValues, choices: number, share: number): Choices => {
  const found: { offered: number; chance: number }[] = []
  const whole = sumOfChoices(values, choices, share)
  const go = (chosen: number, rest: number, chance: number): void => {
    const bound = chance * sumOfChoices(values, rest, share, chosen)
    if (!(bound > leastShare * whole)) return
    if (rest === 0) {
      found.push({ offered: chosen, chance: bound / whole })
      return
    }
    const bit = rest & -rest
    go(chosen | bit, rest & ~bit, chance * share)
    go(chosen, rest & ~bit, chance * (1 - share))
  }
  go(0, choices & values.showing, 1)
  return found
}
