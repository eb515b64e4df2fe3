import { type Dictionary, dictionaryOf, type Entry } from './dictionary.ts'
import { type WayShares, waySharesIn } from './hypotheses.ts'
import { withChecks } from './parts-looked-at.ts'
import { type Query, viewsOfQuery } from './query.ts'
import { rank, type RankedAnswer } from './rank.ts'

/** What may be wrong with a machine. */
export interface Finding {
  /** What every single fault shows in the query's passes, one view a pass. */
  readonly dictionary: Dictionary
  /** The likeliest first; the probabilities add up to 1. */
  readonly answers: readonly RankedAnswer[]
  /** The likeliest answer by the passes alone that is known here, however unlikely. */
  readonly nearest: RankedAnswer | null
}

/** Answers less likely than this are left out; the others' probabilities add up to 1. */
const least = 1e-6

/** The ways of an answer, the likeliest first. */
const likeliestFirst = (ways: RankedAnswer['ways'], sharesOf: WayShares): (readonly Entry[])[] => {
  const shares = sharesOf(ways)
  return ways
    .map((way, n) => ({ way, share: shares[n]! }))
    .sort((one, other) => other.share - one.share)
    .map(({ way }) => way)
}

/**
 * What may be wrong with a machine, from the needles noted in its passes and from the checks made by hand. This is the
 * one way in: the page, its worker and the command all call it, and so have the same answers.
 *
 * Each answer has the ways in which it may be so that nothing seen so far tells apart, what it predicts for each pass,
 * and how it fits the notes. A query with no pass gives a sound machine at its chance beforehand. Throws a `RangeError`
 * where a pass has a row that its card hasn't.
 *
 * @example
 * // Every eighth needle, from L94 on, was missed in a row of all holes.
 * const needles = Array.from({ length: 200 }, (_, n) => (n % 8 === 6 ? 'p' : 's')).join('')
 * const pass: NotedPass = { card: [0xffffff], row: 1, way: 1, speed: 500, needles }
 * const { answers } = infer({ card: pass.card, passes: [pass], slip: slips.sure, checks: [] })
 * answers[0].ways // → [[strip.3.seized]]
 */
export const infer = (query: Query): Finding => {
  const dictionary = dictionaryOf(viewsOfQuery(query))
  const ranked = rank(dictionary, { beds: query.passes.map(({ needles }) => needles), slip: query.slip })
  const sharesOf = waySharesIn(dictionary)
  const weighed = ranked.flatMap((answer) => withChecks(answer, query.checks, sharesOf))
  const all = weighed.reduce((sum, { probability }) => sum + probability, 0)
  const kept = weighed.filter(({ probability }) => probability / all >= least)
  const whole = kept.reduce((sum, { probability }) => sum + probability, 0)
  return {
    dictionary,
    answers: kept
      .map((answer) => ({
        ...answer,
        ways: likeliestFirst(answer.ways, sharesOf),
        probability: answer.probability / whole,
      }))
      .sort((one, other) => other.probability - one.probability),
    nearest: ranked.find(({ kind }) => kind !== 'unknown') ?? null,
  }
}
