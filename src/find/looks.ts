import { type Way, wayOfPass } from '../mechanism/bed.ts'
import { type Needle, slotOf } from '../mechanism/indices.ts'
import { type Letters, noteOf } from './bed-letters.ts'
import { type Query, viewsOfQuery } from './query.ts'
import { needlesAt } from './bed-needles.ts'
import type { View } from './view.ts'

/** The most looks that are weighed together. */
export const mostLooks = 31

/** One look at the bed: the pass of the model, and what was noted of each needle. */
export interface Look {
  readonly view: View
  readonly way: Way
  /** One of `notes` for each needle of the bed, from the left. */
  readonly noted: Uint8Array
}

const notedIn = (letters: Letters, needles: readonly Needle[]): Uint8Array =>
  Uint8Array.from(needles, (_, slot) => noteOf(letters.charAt(slot)))

/** What was noted of a needle in a look: one of `notes`. */
export const noteIn = ({ noted }: Look, needle: number): number => noted[slotOf(needle, noted.length)]!

/** The looks of a query. Throws a RangeError where there are more than `mostLooks`. */
export const looksOf = (query: Query): Look[] => {
  if (query.passes.length > mostLooks)
    throw new RangeError(`there are ${query.passes.length} passes; at most ${mostLooks} are weighed together`)
  const needles = needlesAt(query)
  return viewsOfQuery(query).map((view, n) => ({
    view,
    way: wayOfPass(view.pass),
    noted: notedIn(query.passes[n]?.needles ?? '', needles),
  }))
}
