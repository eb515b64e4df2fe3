import { type Bed, type CardPlace, needleName, usualPlace } from '../mechanism/bed.ts'
import type { Fault } from '../mechanism/fault.ts'
import type { Pass } from '../mechanism/pass.ts'
import { needlesOfBed, ofNeedle } from '../mechanism/indices.ts'
import { faultGroups } from './fault-groups.ts'
import { needlesListed, rangeWords, withUnit } from './lists.ts'

/** What identifies a machine in a comparison. */
interface Machine {
  readonly faults: readonly Fault[]
  readonly wear: number
  readonly seed: number
}

/** Which of two machines it is (`place`; may be empty), and what is wrong with it. */
export const stateTitle = (place: string, { faults, wear, seed }: Machine): string => {
  const worn = wear > 0 ? [`wear ${withUnit(Math.round(100 * wear), '%')}, machine no. ${seed}`] : []
  const all = [...faultGroups(faults).map(({ phrase }) => phrase), ...worn]
  const what = all.length === 0 ? 'sound, as new' : all.join('; ')
  return place === '' ? what : `${place}: ${what}`
}

/** A state as it is kept for a comparison, with its card by name. */
interface KeptMachine extends Machine, CardPlace {
  readonly pass: number
  readonly speed: number
  readonly bed: Bed
}

/** All that is in a kept state: its card, where its work is, how fast, on which needles, and what is wrong. */
export const keptTitle = (card: string, state: KeptMachine): string =>
  [
    card,
    `pass ${state.pass}`,
    withUnit(state.speed, 'mm/s'),
    rangeWords(state.bed.first, state.bed.last),
    ...(state.columnOne === usualPlace.columnOne ? [] : [`column 1 at ${needleName(state.columnOne)}`]),
    stateTitle('', state),
  ].join('; ')

/** The needles of one pass that two machines set out differently, of those that both have, in a sentence. */
export const comparisonWords = (above: Pass, below: Pass): string => {
  const both = needlesOfBed(Math.min(above.came.length, below.came.length))
  const differ = both.filter((needle) => ofNeedle(above.came, needle) !== ofNeedle(below.came, needle))
  return differ.length === 0
    ? `In pass ${above.pass} both set out the same needles.`
    : `In pass ${above.pass} the two differ on ${differ.length === 1 ? 'needle ' : ''}${needlesListed(differ)}.`
}
