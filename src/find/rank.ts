import { stripOfColumn } from '../mechanism/bed.ts'
import { type Dictionary, type Entry, groupBy } from './dictionary.ts'
import { type Fit, fitOf, type Observation, observationOf } from './evidence.ts'
import type { Letters } from './letters.ts'
import { logSum } from './log-sum.ts'
import { type Pair, plainPairs, stripPairs, widePairs } from './pairs.ts'
import { shares, weightsOf } from './priors.ts'
import type { Shown } from './shown.ts'
import { visibleSignature, type FaultClass, faultClassesOf } from './fault-class.ts'
import { unknownLog, worstColumn } from './unknown.ts'

/** One answer to what may be wrong. */
export interface RankedAnswer {
  /** A sound machine, faults that are known, or something that is in no dictionary. */
  readonly kind: 'sound' | 'faults' | 'unknown'
  /** The ways in which it may be so, which the evidence can't tell apart: each a fault alone, or two at once. */
  readonly ways: readonly (readonly Entry[])[]
  /** What it shows in each view; null for what is unknown. */
  readonly shown: readonly Shown[] | null
  readonly probability: number
  /** How it meets the notes; null for what is unknown, and for what is next to impossible. */
  readonly fit: Fit | null
}

interface Scored {
  readonly kind: RankedAnswer['kind']
  readonly ways: readonly (readonly Entry[])[]
  readonly shown: readonly Shown[] | null
  /** Logs of the prior, and of the prior times the likelihood. */
  readonly prior: number
  readonly log: number
}

/** Things with one prediction as one answer; `share` is the prior of a weight of 1. */
const answerOf = (
  members: readonly { ways: Scored['ways']; shown: readonly Shown[]; weight: number; gain: number }[],
  share: number,
  base: number,
): Scored => {
  const [first] = members
  const prior = Math.log(share * members.reduce((sum, { weight }) => sum + weight, 0))
  const ways = members.flatMap((member) => member.ways)
  return { kind: 'faults', ways, shown: first!.shown, prior, log: prior + base + first!.gain }
}

/** Faults that show the same where anyone looked, however far they reach, as one answer. */
const singlesOf = (faultClasses: readonly FaultClass[], base: number): Scored[] =>
  groupBy(faultClasses, ({ key }) => key).map((members) =>
    answerOf(
      members.map((faultClass) => ({ ...faultClass, ways: faultClass.entries.map((entry) => [entry]) })),
      shares.one,
      base,
    ),
  )

/** The same for two faults at once. Their shares are those of unlike faults: `square` is what drawing one twice has. */
const pairsOf = (
  pairs: readonly Pair[],
  observations: readonly Observation[],
  base: number,
  square: number,
): Scored[] =>
  groupBy(pairs, ({ shown }) => visibleSignature(observations, shown)).map((members) =>
    answerOf(members, (2 * shares.two) / (1 - square), base),
  )

/** How many of the likeliest answers are tried with something unknown on top. */
const leaders = 20

/** Something that is in no dictionary: alone, or on top of one of the likeliest answers without chance in it. */
const unknownOf = (scored: readonly Scored[], observations: readonly Observation[]): Scored => {
  const firm = scored.filter(({ shown }) => shown?.every(({ chance }) => chance === 0))
  const best = firm.sort((one, other) => other.log - one.log).slice(0, leaders)
  const logs = best.map(({ prior, shown }) => prior + unknownLog(fitOf(observations, shown!)))
  const prior = Math.log(shares.unknown)
  return { kind: 'unknown', ways: [], shown: null, prior, log: prior + logSum(logs) }
}

/** What was noted in each of a dictionary's views. */
export interface Notes {
  readonly beds: readonly Letters[]
  /** Chance that a needle is noted wrongly, 0 to 1, both excluded. */
  readonly slip: number
}

const bestOf = (scored: readonly Scored[]): readonly Shown[] =>
  scored.reduce((best, one) => (one.log > best.log ? one : best)).shown!

/** Whether an answer leaves needles unexplained, or may only seem to explain them, as chance explains any. */
const leavesRoom = (shown: readonly Shown[], observations: readonly Observation[]): boolean =>
  fitOf(observations, shown).against > 0 || shown.some(({ chance }) => chance > 0)

/**
 * Ranks what may be wrong by Bayes' rule, the likeliest first; the probabilities add up to 1. A sound machine and every
 * single fault of the dictionary are weighed exactly. Two faults at once are tried where the best answer leaves needles
 * unexplained; those that meet on one strip, or change the whole bed, only where slips can't explain what is left in
 * some column, since they are worked out anew. `beds` holds 200 letters for each of the dictionary's views.
 */
export const rank = (dictionary: Dictionary, { beds, slip }: Notes): RankedAnswer[] => {
  const { entries, settings, place } = dictionary
  const observations = settings.map((setting, n) => observationOf(setting, beds[n] ?? '', slip))
  const base = observations.reduce((sum, { log }) => sum + log, 0)
  const weights = weightsOf(entries)
  const square = weights.reduce((sum, weight) => sum + weight * weight, 0)
  const faultClasses = faultClassesOf(entries, weights, observations)
  const sound = settings.map((): Shown => ({ changed: new Uint16Array(0), chance: 0 }))
  const prior = Math.log(shares.sound)
  const scored: Scored[] = [
    { kind: 'sound', ways: [], shown: sound, prior, log: prior + base },
    ...singlesOf(faultClasses, base),
  ]
  const add = (pairs: readonly Pair[]): void =>
    void scored.push(...pairsOf(pairs, observations, base, square))
  if (leavesRoom(bestOf(scored), observations)) add(plainPairs(faultClasses, observations))
  const worst = worstColumn(observations, bestOf(scored), place)
  if (!worst.isCredible) add(stripPairs(faultClasses, stripOfColumn(worst.column), dictionary, observations))
  if (!worstColumn(observations, bestOf(scored), place).isCredible)
    add(widePairs(faultClasses, settings, observations))
  scored.push(unknownOf(scored, observations))
  return rankedOf(scored, observations)
}

/** Answers less likely than this, as a logarithm, are not worth a count of their needles. */
const slight = -14

const rankedOf = (scored: readonly Scored[], observations: readonly Observation[]): RankedAnswer[] => {
  const whole = logSum(scored.map(({ log }) => log))
  return scored
    .map(({ kind, ways, shown, log }) => ({
      kind,
      ways,
      shown,
      probability: Math.exp(log - whole),
      fit: shown && log - whole > slight ? fitOf(observations, shown) : null,
    }))
    .sort((one, other) => other.probability - one.probability)
}
