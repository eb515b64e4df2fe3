import { at } from '../mechanism/lookup.ts'
import { caseCount, casesOf, spreadOverCases } from './case-chances.ts'
import { readers, slowChances } from './chances.ts'
import type { KeptTerm } from './close-strip.ts'
import { endNeedlesOf, offersAtEnd, offersOf } from './end-needles.ts'
import { followersOf, stripColumns } from './frame.ts'
import type { StripShares } from './strip-shares.ts'

/** Weights below this share of the whole are left out of what is said of columns and needles. */
const slight = 1e-6

/** The weights of the cases of a slow strip's columns by reader, and what they come to with its sums. */
interface CaseWeights {
  readonly weights: Float64Array
  readonly whole: number
}

/** By certainty: weights of the cases, summed over wear and slowness; `units` are by hidden state, for a unit of the sum. */
const weightsOf = ({ state, sums }: StripShares, units: Float64Array): Map<number, CaseWeights> => {
  const { lastings, peaks } = state.frame.bed
  const cases = casesOf(lastings)
  const size = caseCount(lastings)
  const byCertainty = new Map<number, { weights: Float64Array; whole: number }>()
  for (const [h, { wear, pivots, reader }] of state.hidden.entries()) {
    const whole = units[h]! * sums.slow[h]!
    if (whole < slight * 0.1) continue
    const certainty = sums.noted.length === 1 ? 0 : peaks.meanCertainty(wear, pivots)
    let found = byCertainty.get(certainty)
    if (!found) {
      found = { weights: new Float64Array(readers.length * size ** 3), whole: 0 }
      byCertainty.set(certainty, found)
    }
    found.whole += whole
    const { weights } = found
    for (const [n, { chance }] of slowChances.entries())
      spreadOverCases(cases[wear]![n]!, size, weights, reader * size ** 3, units[h]! * chance)
  }
  return byCertainty
}

/** A term's weight, and by column the share of each case of its entry. */
interface Weighed {
  readonly term: KeptTerm
  readonly all: number
  readonly cases: readonly Float64Array[]
}

/** Terms with a smaller share of a slow strip say nothing, and those with a smaller share of everything. */
const slightTerm = { ofStrip: 1e-6, ofAll: 1e-7 } as const

/** Weighs a term; null where it comes to nearly nothing. */
const weigh = (term: KeptTerm, weights: Float64Array, size: number, least: number): Weighed | null => {
  const [one, two, three] = term.entries
  const cube = size ** 3
  if (weightOf(term, weights, size) < least) return null
  const cases = term.entries.map(({ whens }) => new Float64Array(whens.length))
  let all = 0
  for (const [i, first] of one.whens.entries())
    for (const [j, second] of two.whens.entries())
      for (const [k, third] of three.whens.entries()) {
        const place = (first.when * size + second.when) * size + third.when
        let weight = 0
        for (let r = 0; r < readers.length; r++)
          weight +=
            weights[r * cube + place]! *
            first.chances[r]! *
            second.chances[r]! *
            third.chances[r]! *
            term.value
        all += weight
        cases[0]![i]! += weight
        cases[1]![j]! += weight
        cases[2]![k]! += weight
      }
  return { term, all, cases }
}

/** What a term comes to. */
const weightOf = (
  { entries: [one, two, three], value }: KeptTerm,
  weights: Float64Array,
  size: number,
): number => {
  const cube = size ** 3
  let all = 0
  for (const first of one.whens)
    for (const second of two.whens)
      for (const third of three.whens) {
        const place = (first.when * size + second.when) * size + third.when
        for (let r = 0; r < readers.length; r++)
          all += weights[r * cube + place]! * first.chances[r]! * second.chances[r]! * third.chances[r]!
      }
  return all * value
}

/** Adds one term with its weight to what a strip says. */
const addTerm = (
  shares: StripShares,
  certainty: number,
  { term, all, cases }: Weighed,
  scale: number,
): void => {
  const { state, strip, columns, block, offers } = shares
  const { frame } = state
  const weight = all * scale
  const { entries, over } = term
  const { anyShowing } = at(shares.sums.noted, certainty).needles
  block.addSlow(
    entries.map(({ whens }, m) => ({
      states: whens.map((when) => when.state),
      shares: cases[m]!.map((one) => one / all),
    })),
    weight,
  )
  for (const [m, column] of stripColumns(strip).entries()) {
    const own = at(entries, m)
    for (const [n, { state: name }] of own.whens.entries()) {
      const share = cases[m]![n]! * scale
      if (name === 'sticky')
        columns.addStickyIn(column, own.pushes, frame.bed.pushed[column]! & anyShowing, share)
      else columns.add(column, name, share)
    }
    const [before, after] = [at(entries, (m + 2) % 3).reach, at(entries, (m + 1) % 3).reach]
    const { middle, ends } = endNeedlesOf(frame.layout, frame.bed.spans, followersOf(frame, column, over))
    const list = at(offers, certainty)
    list.add(middle, offersOf(own.reach, before, after), weight)
    for (const end of ends) list.add(end.group, offersAtEnd(end, own.reach, before, after), weight)
  }
}

/** Adds what a slow strip says of its columns and needles; `units` are by hidden state, for a unit of its sum. */
export const addSlowShares = (shares: StripShares, units: Float64Array): void => {
  const size = caseCount(shares.state.frame.bed.lastings)
  for (const [certainty, { weights, whole }] of weightsOf(shares, units)) {
    if (whole < slight) continue
    const least = Math.max(slightTerm.ofStrip * whole, slightTerm.ofAll)
    const terms = at(shares.sums.terms, certainty).flatMap((term) => weigh(term, weights, size, least) ?? [])
    // Terms that were not kept have a little of the whole: the others speak for them.
    const kept = terms.reduce((sum, { all }) => sum + all, 0)
    for (const term of terms) addTerm(shares, certainty, term, whole / kept)
  }
}
