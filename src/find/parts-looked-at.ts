import type { Fault } from '../mechanism/fault.ts'
import { checkOf } from './checks.ts'
import { type Entry, groupBy } from './dictionary.ts'
import type { WayShares } from './hypotheses.ts'
import { type CheckMade, kindAndPlace } from './query.ts'
import type { RankedAnswer } from './rank.ts'

/** Chance that somebody who looks at a part misses what it has, or sees what it hasn't. Common practice from memory. */
const mistaken = 0.03

/** Whether what a check found contradicts these faults; a pass never does, as its bed is noted by itself. */
const contradicts = ({ check, found }: CheckMade, faults: readonly Fault[]): boolean => {
  const made = checkOf(check)
  if (made.kind === 'pass') return false
  const there = faults.filter(({ kind }) => made.shows.includes(kind)).map(kindAndPlace)
  return found ? !there.includes(kindAndPlace(found)) : there.length > 0
}

/** How many of the checks contradict the faults of a way. */
const contradictionsOf = (checks: readonly CheckMade[], way: readonly Entry[]): number => {
  const faults = way.map(({ fault }) => fault)
  return checks.filter((check) => contradicts(check, faults)).length
}

/** Odds of so many contradictions, beside none: the likelihood but for a factor that all answers share. */
const oddsOf = (contradictions: number): number => (mistaken / (1 - mistaken)) ** contradictions

/**
 * An answer with what was found at parts taken in: its probability times the odds of that, not yet normalised.
 * Ways that the parts tell apart become answers of their own.
 */
export const withChecks = (
  answer: RankedAnswer,
  checks: readonly CheckMade[],
  sharesOf: WayShares,
): RankedAnswer[] => {
  if (checks.length === 0) return [answer]
  const { kind, ways, probability } = answer
  if (kind !== 'faults')
    return [{ ...answer, probability: probability * oddsOf(contradictionsOf(checks, [])) }]
  const shares = sharesOf(ways)
  const parted = ways.map((way, n) => ({ way, share: shares[n]!, against: contradictionsOf(checks, way) }))
  return groupBy(parted, ({ against }) => String(against)).map((group) => ({
    ...answer,
    ways: group.map(({ way }) => way),
    probability: probability * group.reduce((sum, { share }) => sum + share, 0) * oddsOf(group[0]!.against),
  }))
}
