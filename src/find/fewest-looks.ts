import { at } from '../mechanism/lookup.ts'
import {
  after,
  type Demand,
  hardestOf,
  isMetBy,
  leastFor,
  looksFor,
  type Missing,
  missingAll,
} from './demand.ts'

/** Which looks to take, in their order, and how sure it is that fewer will not do. */
export interface FewestLooks {
  readonly taken: readonly number[]
  /** No set of fewer looks than this meets every demand. */
  readonly atLeast: number
}

/** Among so many looks the fewest are found however many sets must be tried; among more, so many sets are tried. */
const certain = { looks: 20, tries: 2000 } as const

/** A gain must be larger than the best by this to be called larger. */
const slight = 1e-12

/** The look that meets most of what is missing, the first of equals; null where none meets any of it. */
const bestLook = (missing: Missing, looks: readonly number[]): number | null => {
  let best: { look: number | null; gain: number } = { look: null, gain: 0 }
  for (const look of looks) {
    const gain = missing.reduce((sum, [demand, left]) => sum + Math.min(left, demand[look]!), 0)
    if (gain > best.gain + slight) best = { look, gain }
  }
  return best.look
}

/** Always the look that meets most, and then without those that are not needed; null where it comes to no end. */
const greedy = (demands: readonly Demand[], twins: readonly number[]): readonly number[] | null => {
  let open: readonly number[] = [...twins.keys()]
  let missing = missingAll(demands)
  const taken: number[] = []
  while (missing.length > 0) {
    const next = bestLook(missing, open)
    if (next === null) return null
    taken.push(next)
    missing = after(missing, next)
    open = open.filter((look) => look !== next && look !== at(twins, next))
  }
  return taken.reduce<readonly number[]>((kept, look) => {
    const without = kept.filter((one) => one !== look)
    return demands.every((demand) => isMetBy(demand, without)) ? without : kept
  }, taken)
}

/** The demand that the fewest of these looks meet any of: one of those must be taken. */
const hardest = (missing: Missing, looks: readonly number[]): number[] =>
  missing
    .map(([demand]) => looksFor(demand, looks))
    .reduce((least, own) => (own.length < least.length ? own : least))

/**
 * The fewest looks that meet every demand, each look at most once, and never a look with its twin: `twins` has by look the
 * one that excludes it, itself where none does. By branch and bound from what a greedy choice finds: exact among few
 * looks, and mostly among many; where there is too much to try, it is the best set found, with a bound below which none
 * can be. Null where no set that meets every demand was found.
 */
export const fewestLooks = (all: readonly Demand[], twins: readonly number[]): FewestLooks | null => {
  const demands = hardestOf(all)
  const every = [...twins.keys()]
  const column = every.map((look) => demands.map((demand) => demand[look]).join())
  // Looks that meet the same, and whose twins do, are tried as one.
  const likeness = every.map((look) => `${column[look]} ${column[at(twins, look)]}`)
  let best = greedy(demands, twins)
  let tries = 0
  const mostTries = every.length <= certain.looks ? Infinity : certain.tries
  const follow = (missing: Missing, taken: readonly number[], open: readonly number[]): void => {
    if (missing.length === 0) {
      best = taken
      return
    }
    const tried = new Set<string>()
    const left = new Set(open)
    for (const look of hardest(missing, open)) {
      left.delete(look)
      if (tried.has(at(likeness, look))) continue
      tried.add(at(likeness, look))
      const next = after(missing, look)
      const others = [...left].filter((one) => one !== at(twins, look))
      if (tries > mostTries) return
      if (taken.length + 1 + leastFor(next, others) >= (best?.length ?? Infinity)) continue
      tries++
      follow(next, [...taken, look], others)
    }
  }
  const least = leastFor(missingAll(demands), every)
  if (least < (best?.length ?? Infinity)) follow(missingAll(demands), [], every)
  return (
    best && {
      taken: best.toSorted((one, other) => one - other),
      atLeast: tries <= mostTries ? best.length : least,
    }
  )
}
