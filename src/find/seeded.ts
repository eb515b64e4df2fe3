import { at } from '../mechanism/lookup.ts'

/** Gives numbers from 0 to 1, the same for the same seed. */
export type Numbers = () => number

/** Numbers from 0 to 1 that follow from a whole seed, one after the other (a counter through a 32-bit mixing step). */
export const numbersFrom = (seed: number): Numbers => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b)
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 0x100000000
  }
}

/** Index of one of some weights, each as likely as its share of them all; the last where they are all 0. */
export const pickIndex = (weights: ArrayLike<number>, next: Numbers): number => {
  let whole = 0
  for (let n = 0; n < weights.length; n++) whole += weights[n]!
  let left = next() * whole
  for (let n = 0; n < weights.length; n++) if ((left -= weights[n]!) < 0) return n
  return weights.length - 1
}

/** One of some things, each as likely as its weight's share of them all. Throws a RangeError where there are none. */
export const pickBy = <Thing>(
  things: readonly Thing[],
  weightOf: (thing: Thing) => number,
  next: Numbers,
): Thing => at(things, pickIndex(things.map(weightOf), next))
