import type { Fault } from '../mechanism/fault.ts'
import type { Pass } from '../mechanism/pass.ts'
import { faultGroups } from './fault-groups.ts'
import { needlesListed } from './lists.ts'

/** What identifies a machine in a comparison. */
interface Machine {
  readonly faults: readonly Fault[]
  readonly wear: number
  readonly seed: number
}

/** Which of two machines it is (`place`; may be empty), and what is wrong with it. */
export const stateTitle = (place: string, { faults, wear, seed }: Machine): string => {
  const worn = wear > 0 ? [`wear ${Math.round(100 * wear)} %, machine no. ${seed}`] : []
  const all = [...faultGroups(faults).map(({ phrase }) => phrase), ...worn]
  const what = all.length === 0 ? 'sound, as new' : all.join('; ')
  return place === '' ? what : `${place}: ${what}`
}

/** The needles of one pass that two machines set out differently, in a sentence. */
export const comparisonWords = (above: Pass, below: Pass): string => {
  const differ = above.came.flatMap((outcome, index) => (outcome === below.came[index] ? [] : [index]))
  return differ.length === 0
    ? `In pass ${above.pass} both set out the same needles.`
    : `In pass ${above.pass} the two differ on ${differ.length === 1 ? 'needle ' : ''}${needlesListed(differ)}.`
}
