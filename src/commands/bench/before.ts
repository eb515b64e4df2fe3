import { pivotChances, retainerChances, wideChances as chance } from '../../find/chances.ts'
import { type Finding, oils, type PlaceFinding } from '../../find/finding.ts'
import type { WidePlace } from '../../find/place.ts'

/** Chance that a part which reaches the whole bed is wrong before anything is seen, the bar and the pivots apart. */
const wide: Readonly<Record<Exclude<WidePlace, 'retainer' | 'pivots'>, number>> = {
  carriage: chance.carriagePlain,
  card: chance.cardOut + chance.cardLocked + chance.cardReversed + chance.cardSide + chance.cardSkew,
  turn: chance.turnTwice + 3 * chance.pawl,
  belt: chance.beltOff + 2 * chance.beltEights + 2 * chance.beltOneWay + chance.beltOut,
  presser: 2 * chance.presser,
  gate: chance.gateHigh + chance.gateLow,
  sweep: chance.sweep,
}

const pivots = pivotChances.filter(({ mm }) => mm > 0).reduce((sum, one) => sum + one.chance, 0)

/** Chance that a place was wrong before the notes, under the oil and the reader that they speak for. */
export const beforeOf = ({ place, before }: PlaceFinding, { oil }: Pick<Finding, 'oil'>): number => {
  if (before !== null) return before
  if (place === 'pivots') return pivots
  if (place === 'retainer') return oils.reduce((sum, one) => sum + oil[one] * retainerChances[one], 0)
  return wide[place as keyof typeof wide]
}

const logOdds = (chanceOf: number): number => Math.log(chanceOf / (1 - chanceOf))

/** Whether the notes speak of a place: they moved the logarithm of its odds by more than 1. */
export const isSpokenOf = (place: PlaceFinding, finding: Pick<Finding, 'oil'>): boolean =>
  Math.abs(logOdds(place.wrong) - logOdds(beforeOf(place, finding))) > 1
