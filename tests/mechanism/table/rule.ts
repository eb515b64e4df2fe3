import type { Card } from '@/mechanism/card.ts'
import type { Outcome } from '@/mechanism/gate.ts'
import type { Stage } from '@/mechanism/fault-kinds.ts'
import { columnAt, holeIn, stripAt } from '../trade.ts'

/** All that a rule of the fault table may look at: one needle in one pass, and the card. */
export interface Asked {
  readonly pass: number
  readonly way: 1 | -1
  /** Place on the bed, 0 to 199. */
  readonly needle: number
  readonly column: number
  readonly strip: number
  /** Whether the card has a hole for this needle in the row due. */
  readonly own: boolean
  /** The row due, counted on from 1 without wrapping. */
  readonly due: number
  /** Whether the card, a loop, has a hole in a row and a column. */
  readonly hole: (row: number, column: number) => boolean
  /** The row due, as a number of the card's own. */
  readonly cardRow: number
}

/** What a fault of the table does, in the words of its row, and whom the model must blame. */
export interface Rule {
  readonly id: string
  readonly shows: string
  readonly comes: (asked: Asked) => boolean | 'unmoved'
  readonly stage: Stage | ((asked: Asked) => Stage)
  readonly part: string
  readonly speed?: number
}

export const askedOf = (card: Card, pass: number, needle: number): Asked => {
  const hole = (row: number, column: number): boolean => holeIn(card[(row - 1) % card.length]!, column)
  const column = columnAt(needle)
  return {
    pass,
    way: pass % 2 === 1 ? 1 : -1,
    needle,
    column,
    strip: stripAt(needle),
    own: hole(pass, column),
    due: pass,
    hole,
    cardRow: ((pass - 1) % card.length) + 1,
  }
}

export const outcome = (came: boolean | 'unmoved'): Outcome =>
  came === 'unmoved' ? came : came ? 'selected' : 'plain'
