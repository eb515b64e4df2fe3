import type { Bed } from '../../mechanism/bed.ts'
import type { Pass } from '../../mechanism/pass.ts'
import { needlesBetween, ofNeedle } from '../../mechanism/indices.ts'
import { counted, rangeWords } from '../lists.ts'
import { passOutcomeWords } from '../symptoms.ts'

/** What came out of a pass, in a phrase that needs no words around it. */
export const bedOutcome = (pass: Pass): string =>
  pass.departures.length === 0 ? 'every needle as the card asks' : passOutcomeWords(pass)

/** The bed from above after a pass, in one sentence. */
export const describeBed = (pass: Pass, { first, last }: Bed): string => {
  const inUse = needlesBetween(first, last).map((needle) => ofNeedle(pass.came, needle))
  const selected = inUse.filter((outcome) => outcome === 'selected').length
  const plain = inUse.filter((outcome) => outcome === 'plain').length
  return `The bed from above, ${rangeWords(first, last)}: ${counted(selected, 'needle')} selected, ${plain} plain; ${bedOutcome(pass)}.`
}
