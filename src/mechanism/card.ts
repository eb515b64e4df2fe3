import { dimensions } from './dimensions.ts'
import { type CardRow, type Column, ofRow } from './indices.ts'

/** One row of a card: a 24-bit number, column 1 the highest bit, a hole = 1. */
export type RowHoles = number

/** A card's rows in the order in which they are read; at least one row. */
export type Card = readonly RowHoles[]

/** The most rows a card may have here. */
export const mostRows = 200

/** The bit of a column in a row. */
export const columnBit = (column: Column): number => 1 << (dimensions.columns - column)

/** Whether a row has a hole in a column. */
export const hasHole = (row: RowHoles, column: Column): boolean => (row & columnBit(column)) !== 0

/** Whether a card has a hole there as it was punched; a machine without a card has none. */
export const isPunched = (card: Card | null, row: CardRow, column: Column): boolean =>
  card !== null && hasHole(ofRow(card, row), column)

/** A row with every hole. */
export const everyHole: RowHoles = 0xffffff
