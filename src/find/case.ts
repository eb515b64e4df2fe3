import type { Card } from '../mechanism/card.ts'
import { type Dictionary, dictionaryOf } from './dictionary.ts'
import type { Letters } from './evidence.ts'
import { type Next, nextChecks } from './next.ts'
import { rank, type Suspect } from './rank.ts'
import { type Noted, viewsOf } from './view.ts'

/** One pass as somebody saw it. */
export interface Sighting extends Noted {
  /** 200 letters, L100 first. */
  readonly needles: Letters
}

/** What is known of a machine: its card and the passes seen. */
export interface Case {
  readonly card: Card | null
  readonly passes: readonly Sighting[]
}

/** What may be wrong, and what to look at next. */
export interface Finding {
  readonly dictionary: Dictionary
  readonly suspects: readonly Suspect[]
  readonly next: readonly Next[]
}

/** Works a case through: what every fault would show, which of them was seen, and which check settles most. */
export const findFault = (known: Case): Finding => {
  const dictionary = dictionaryOf(viewsOf(known.card, known.passes))
  const suspects = rank(dictionary, { beds: known.passes.map(({ needles }) => needles) })
  return { dictionary, suspects, next: nextChecks(known, dictionary, suspects) }
}
