import { type Way, wayOfPass } from '../mechanism/bed.ts'
import { allNeedles } from '../mechanism/indices.ts'
import { type Letters, noteOf } from './letters.ts'
import { type Query, viewsOfQuery } from './query.ts'
import type { View } from './view.ts'

/** The most looks that are weighed together. */
export const mostLooks = 31

/** One look at the bed: the pass of the model, and what was noted of each needle. */
export interface Look {
  readonly view: View
  readonly way: Way
  /** By needle: one of `notes`. */
  readonly noted: Uint8Array
}

const notedIn = (letters: Letters): Uint8Array =>
  Uint8Array.from(allNeedles, (needle) => noteOf(letters.charAt(needle)))

/** The looks of a query. Throws a RangeError where there are more than `mostLooks`. */
export const looksOf = (query: Query): Look[] => {
  if (query.passes.length > mostLooks)
    throw new RangeError(`there are ${query.passes.length} passes; at most ${mostLooks} are weighed together`)
  return viewsOfQuery(query).map((view, n) => ({
    view,
    way: wayOfPass(view.pass),
    noted: notedIn(query.passes[n]?.needles ?? ''),
  }))
}
