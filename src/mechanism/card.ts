import { dimensions } from './dimensions.ts'

/** One row of a card: a 24-bit number, column 1 the highest bit, a hole = 1. */
export type RowHoles = number

/** A card's rows in the order in which they are read; at least one row. */
export type Card = readonly RowHoles[]

/** The most rows a card may have here. */
export const mostRows = 200

/** The bit of column 1 to 24 in a row. */
export const columnBit = (column: number): number => 1 << (dimensions.columns - column)

/** Whether a row has a hole in column 1 to 24. */
export const hasHole = (row: RowHoles, column: number): boolean => (row & columnBit(column)) !== 0

/** A row with every hole. */
export const everyHole: RowHoles = 0xffffff
