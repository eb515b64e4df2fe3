import type { CardEdit } from '../../link/card-edit.ts'
import type { Card } from '../../mechanism/card.ts'

/** What the editor's tools work on. */
export interface Bench {
  /** The card in the reader; null for none. */
  readonly card: () => Card | null
  /** The row that is chosen, from 1. */
  readonly row: () => number
  readonly choose: (row: number) => void
  /** Puts a card into the reader and says something about it. */
  readonly use: (rows: Card, said: string) => void
  /** The same for a change that may have been refused, which is said then. Gives whether it was made. */
  readonly edit: (edit: CardEdit, said: string) => boolean
  readonly tell: (words: string) => void
}
