import { type Entry, groupBy, signatureOf } from './dictionary.ts'
import { gainOf, visibleOf, type Observation } from './evidence.ts'
import type { Shown } from './shown.ts'

/** Faults that show the same on the needles looked at, and reach equally far. */
export interface FaultClass {
  readonly entries: readonly Entry[]
  /** Their share among single faults, together. */
  readonly weight: number
  readonly shown: readonly Shown[]
  /** What of it could be seen, as a key. */
  readonly key: string
  /** Log of how much more likely they make the evidence than a sound machine does. */
  readonly gain: number
}

/** Log of how much more likely a prediction makes all the evidence than a sound machine does. */
export const gainOfAll = (observations: readonly Observation[], shown: readonly Shown[]): number => {
  let gain = 0
  for (const [n, observation] of observations.entries()) {
    gain += gainOf(observation, shown[n]!)
  }
  return gain
}

/** A key of what could be seen of a prediction on the needles looked at. */
export const visibleSignature = (observations: readonly Observation[], shown: readonly Shown[]): string =>
  signatureOf(shown.map((one, n) => visibleOf(observations[n]!, one)))

/** The entries in groups that the evidence can't tell apart and that reach equally far. */
export const faultClassesOf = (
  entries: readonly Entry[],
  weights: Float64Array,
  observations: readonly Observation[],
): FaultClass[] => {
  const isWhole = observations.every(({ looked, noted }) => looked === noted.length)
  const keyOf = (entry: Entry): string => (isWhole ? entry.key : visibleSignature(observations, entry.shown))
  const keys = new Map(entries.map((entry, n) => [entry, { key: keyOf(entry), n }]))
  const reachKey = ({ reach }: Entry): string =>
    reach.of === 'needle'
      ? `needle ${reach.needle}`
      : reach.of === 'strip'
        ? `strip ${reach.strip}`
        : reach.of
  return groupBy(entries, (entry) => `${reachKey(entry)} ${keys.get(entry)!.key}`).map(
    (members): FaultClass => {
      const first = members[0]!
      return {
        entries: members,
        weight: members.reduce((sum, entry) => sum + weights[keys.get(entry)!.n]!, 0),
        shown: first.shown,
        key: keys.get(first)!.key,
        gain: gainOfAll(observations, first.shown),
      }
    },
  )
}
