import { at } from '../mechanism/lookup.ts'
import type { ByHand } from './by-hand.ts'
import { columnChances, needleChances, readers, stripChances } from './chances.ts'
import { oils, type PlaceFinding, type Way } from './finding.ts'
import type { Cause, Place } from './place.ts'
import type { Posterior } from './posterior.ts'

/** Places less likely wrong than this are left out. */
const leastWrong = 0.01

/** Chance before the notes, under the oil and the reader that they speak for; null for what reaches the whole bed. */
const beforeOf = ({ oil, reader }: Posterior, place: Place): number | null => {
  if (place.startsWith('strip.'))
    return oils.reduce((sum, name) => {
      const { slow, seized, over } = stripChances[name]
      return sum + oil[name] * (slow + seized + over)
    }, 0)
  if (place.startsWith('column.'))
    return readers.reduce((sum, name, n) => {
      const { dead, high, over, sticky, other } = columnChances[name]
      return sum + at(reader, n) * (dead + high + over + sticky + other)
    }, 0)
  const { noHold, stiff, gone, other } = needleChances
  return place.startsWith('needle.') ? noHold + stiff + gone + other : null
}

/** A way parted into its causes, where what was found by hand or seen before distinguishes them. */
const partedBy = (byHand: ByHand, causes: readonly Cause[], weight: number): Way[] => {
  const factors = causes.map((cause) => byHand.causes([cause], causes))
  if (Math.max(...factors) === Math.min(...factors)) return [{ causes, probability: weight }]
  const shares = byHand.shares(causes).map((share, n) => share * at(factors, n))
  const whole = shares.reduce((sum, share) => sum + share, 0)
  return causes.map((cause, n) => ({ causes: [cause], probability: (weight * at(shares, n)) / whole }))
}

/** The places that may be wrong, the likeliest first. */
export const placesOf = (posterior: Posterior, byHand: ByHand): PlaceFinding[] =>
  posterior.tally
    .entries()
    .map(({ place, ways }): PlaceFinding => ({
      place,
      wrong: Math.min(
        1,
        ways.reduce((sum, { weight }) => sum + weight, 0),
      ),
      before: beforeOf(posterior, place),
      ways: ways
        .flatMap(({ causes, weight }) => partedBy(byHand, causes, weight))
        .sort((one, other) => other.probability - one.probability),
    }))
    .filter(({ wrong }) => wrong >= leastWrong)
    .sort((one, other) => other.wrong - one.wrong)
