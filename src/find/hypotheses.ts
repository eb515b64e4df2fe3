import type { Dictionary, Entry } from './dictionary.ts'
import { weightsOf } from './priors.ts'
import type { RankedAnswer } from './rank.ts'

/** One thing that may be so, with its probability: faults at once, none of them, or something unknown (null). */
export interface Hypothesis {
  readonly entries: readonly Entry[] | null
  readonly probability: number
}

/** Gives the shares of an answer's ways in it, by how common their faults are; they add up to 1. */
export type WayShares = (ways: readonly (readonly Entry[])[]) => number[]

/** The shares of ways of a dictionary's entries. Throws where a way has an entry of another dictionary. */
export const waySharesIn = ({ entries }: Dictionary): WayShares => {
  const weights = weightsOf(entries)
  const weightOf = new Map(entries.map((entry, n) => [entry, weights[n]]))
  const weight = (entry: Entry): number => {
    const found = weightOf.get(entry)
    if (found === undefined) throw new Error(`the dictionary has no entry ${entry.id}`)
    return found
  }
  return (ways) => {
    const products = ways.map((way) => way.reduce((product, entry) => product * weight(entry), 1))
    const whole = products.reduce((sum, product) => sum + product, 0)
    return products.map((product) => product / whole)
  }
}

/** Answers less likely than this, and ways of theirs, are left out: they hardly change what a check settles. */
const least = { answer: 1e-4, way: 1e-6 } as const

/** The answers taken apart: every way in which each may be so, by how common its faults are. */
export const hypothesesOf = (dictionary: Dictionary, answers: readonly RankedAnswer[]): Hypothesis[] => {
  const sharesOf = waySharesIn(dictionary)
  const all = answers
    .filter(({ probability }) => probability >= least.answer)
    .flatMap(({ kind, ways, probability }): Hypothesis[] => {
      if (kind !== 'faults') return [{ entries: kind === 'sound' ? [] : null, probability }]
      const shares = sharesOf(ways)
      return ways.map((entries, n) => ({ entries, probability: probability * shares[n]! }))
    })
    .filter(({ probability }) => probability >= least.way)
  const sum = all.reduce((total, { probability }) => total + probability, 0)
  return all.map(({ entries, probability }) => ({ entries, probability: probability / sum }))
}
