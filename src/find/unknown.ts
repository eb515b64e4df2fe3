import { type CardPlace, columnOfNeedle } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Column, toColumn, toNeedle } from '../mechanism/indices.ts'
import { compare, type Fit, type Observation } from './evidence.ts'
import { logSum } from './log-sum.ts'
import type { Shown } from './shown.ts'

/** The rates of wrong needles that something unknown may cause, each as likely: from one in ten to nearly all. */
const rates = Array.from({ length: 90 }, (_, n) => 0.1 + n / 100)

/**
 * Log of how likely the evidence is where something unknown comes on top of a prediction, and makes needles come out
 * otherwise, either way, at a rate nobody knows.
 */
export const unknownLog = ({ against, looked }: Fit): number =>
  logSum(rates.map((rate) => (looked - against) * Math.log(1 - rate) + against * Math.log(rate / 2))) -
  Math.log(rates.length)

/** Chance of at least `count` slips in `trials` needles. */
export const slipsOrMore = (count: number, trials: number, slip: number): number => {
  let term = (1 - slip) ** trials
  let chance = 0
  for (let n = 0; n <= trials; n++) {
    if (n >= count) chance += term
    term *= ((trials - n) / (n + 1)) * (slip / (1 - slip))
  }
  return chance
}

/** Slips less likely than this, in one column's needles, explain nothing. */
const incredible = 1e-5

/** The column in which a prediction fails most, with how often; slips there may or may not explain it. */
export const worstColumn = (
  observations: readonly Observation[],
  shown: readonly Shown[],
  place: CardPlace,
): { column: Column; isCredible: boolean } => {
  const against = new Array<number>(dimensions.columns).fill(0)
  const looked = new Array<number>(dimensions.columns).fill(0)
  for (const [n, observation] of observations.entries())
    compare(observation, shown[n], (needle, _, isMet) => {
      const column = columnOfNeedle(toNeedle(needle), place) - 1
      looked[column]!++
      if (!isMet) against[column]!++
    })
  const count = Math.max(...against)
  const column = against.indexOf(count)
  const slip = observations[0]?.slip ?? 0
  return { column: toColumn(column + 1), isCredible: slipsOrMore(count, looked[column]!, slip) >= incredible }
}
