import type { Fault } from '../mechanism/fault.ts'
import type { Finding } from './finding.ts'
import { type Cause, faultOfCause } from './place.ts'

/** One whole machine that may be so: what is wrong with it, and its probability among those listed. */
export interface Hypothesis {
  readonly faults: readonly Fault[]
  readonly hasCard: boolean
  readonly probability: number
}

/** A listed machine counts as at most so many, one for each cause that no look distinguishes from another. */
const mostAlike = 8

/** Every choice of one cause a way, at most `mostAlike` of them. */
const choicesOf = (ways: readonly (readonly Cause[])[]): (readonly Cause[])[] =>
  ways.reduce<(readonly Cause[])[]>(
    (choices, causes) =>
      choices.length * causes.length > mostAlike
        ? choices.map((choice) => [...choice, ...causes.slice(0, 1)])
        : choices.flatMap((choice) => causes.map((cause) => [...choice, cause])),
    [[]],
  )

/** The whole machines of a finding that are listed, each with one cause a place; the likeliest first. */
export const hypothesesOf = ({ ranked }: Finding): Hypothesis[] => {
  const all = ranked.flatMap(({ faults, probability }) => {
    if (faults === null) return []
    const choices = choicesOf(faults)
    return choices.map((causes) => ({
      faults: causes.flatMap((cause) => faultOfCause(cause) ?? []),
      hasCard: !causes.includes('card.out'),
      probability: probability / choices.length,
    }))
  })
  const whole = all.reduce((sum, { probability }) => sum + probability, 0)
  return all
    .map((one) => ({ ...one, probability: one.probability / whole }))
    .sort((one, other) => other.probability - one.probability)
}
