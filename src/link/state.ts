import type { Bed, CardPlace } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import type { Fault } from '../mechanism/fault.ts'
import type { Own } from '../mechanism/own.ts'
import type { Scenario } from '../mechanism/scenario.ts'

/** The card in the reader: one of the site's own by its id, one that travels in the link, or none. */
export type CardChoice =
  | { readonly kind: 'site'; readonly id: string }
  | { readonly kind: 'own'; readonly rows: Card }
  | { readonly kind: 'none' }

/** The site's cards by id, and which of them is meant where a link names none. */
export interface CardLibrary {
  readonly main: string
  readonly cards: ReadonlyMap<string, Card>
}

/** One exact state: all that a link says. */
export interface State extends CardPlace {
  readonly card: CardChoice
  /** From 1. */
  readonly pass: number
  /** Carriage position in needles, as `x` in the model. */
  readonly at: number
  readonly faults: readonly Fault[]
  readonly speed: number
  readonly wear: number
  readonly seed: number
  readonly bed: Bed
  /** What was measured of the machine; the rest is the training machine's. */
  readonly own: Own
  /** Plain text to the reader; empty for none. */
  readonly note: string
}

/** The ranges of a state's numbers, and the most of what may be many. */
export const limits = {
  pass: [1, 9999],
  speed: [50, 2000],
  wear: [0, 1],
  seed: [0, 0xffffffff],
  noteCharacters: 280,
  faults: 100,
} as const

/** The site's main card: what a link means that names none. */
export const mainCard = 'harbour-star'

/** The rows of a state's card; null without a card. A card that the library lacks gives its main card's rows. */
export const rowsOf = (choice: CardChoice, library: CardLibrary): Card | null => {
  if (choice.kind === 'none') return null
  if (choice.kind === 'own') return choice.rows
  return library.cards.get(choice.id) ?? library.cards.get(library.main) ?? null
}

/** The model's scenario for a state. */
export const scenarioOf = (state: State, library: CardLibrary): Scenario => ({
  card: rowsOf(state.card, library),
  faults: state.faults,
  speed: state.speed,
  wear: state.wear,
  seed: state.seed,
  bed: state.bed,
  columnOne: state.columnOne,
  own: state.own,
})
