import { type Card, type RowHoles, columnBit, everyHole, hasHole, mostRows } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { isColumn, toColumn } from '../mechanism/indices.ts'

/** What came of a change to a card: the changed card, or one sentence that says why it stays as it is. */
export type CardEdit = { readonly rows: Card } | { readonly rows: null; readonly reason: string }

const { columns } = dimensions

const refused = (reason: string): CardEdit => ({ rows: null, reason })

const tooMany = (rows: number): CardEdit =>
  refused(`That would make ${rows} rows. A card has at most ${mostRows} rows here.`)

const isRow = (card: Card, row: number): boolean => Number.isInteger(row) && row >= 1 && row <= card.length

const noRow = (card: Card, row: number): CardEdit =>
  refused(
    `There is no row ${row}: this card has ${card.length === 1 ? '1 row' : `rows 1 to ${card.length}`}.`,
  )

/** Why a range of rows is none of this card's, or null where it is one. */
const rangeTrouble = (card: Card, from: number, to: number): CardEdit | null => {
  const stray = [from, to].find((row) => !isRow(card, row))
  if (stray !== undefined) return noRow(card, stray)
  return from > to ? refused(`Row ${from} comes after row ${to}. Name the lower row first.`) : null
}

/** A card of so many rows without a hole. */
export const emptyCard = (rows: number): CardEdit => {
  if (!Number.isInteger(rows) || rows < 1) return refused('A card has at least 1 row.')
  return rows > mostRows ? tooMany(rows) : { rows: new Array<RowHoles>(rows).fill(0) }
}

/** Punches a hole in a row and column, both from 1, or fills it. */
export const withHole = (card: Card, row: number, column: number, isHole: boolean): CardEdit => {
  if (!isRow(card, row)) return noRow(card, row)
  if (!isColumn(column)) return refused(`There is no column ${column}: a card has columns 1 to ${columns}.`)
  const bit = columnBit(column)
  return { rows: card.map((holes, n) => (n === row - 1 ? (isHole ? holes | bit : holes & ~bit) : holes)) }
}

/** Puts an empty row after a row; after row 0 is before the first. */
export const addRow = (card: Card, after: number): CardEdit => {
  if (after !== 0 && !isRow(card, after)) return noRow(card, after)
  if (card.length >= mostRows) return tooMany(card.length + 1)
  return { rows: card.toSpliced(after, 0, 0) }
}

/** Takes rows out, from the first named to the last. */
export const removeRows = (card: Card, from: number, to: number): CardEdit => {
  const trouble = rangeTrouble(card, from, to)
  if (trouble) return trouble
  const count = to - from + 1
  if (count === card.length)
    return refused(`A card has at least 1 row, so ${count === 1 ? 'the last one' : 'one of them'} must stay.`)
  return { rows: card.toSpliced(from - 1, count) }
}

/** Repeats rows so that they stand so many times in all, one after the other. */
export const repeatRows = (card: Card, from: number, to: number, times: number): CardEdit => {
  const trouble = rangeTrouble(card, from, to)
  if (trouble) return trouble
  if (!Number.isInteger(times) || times < 2)
    return refused('To repeat rows, have them at least 2 times in all.')
  const part = card.slice(from - 1, to)
  const length = card.length + part.length * (times - 1)
  if (length > mostRows) return tooMany(length)
  const copies = Array.from({ length: times - 1 }, () => part).flat()
  return { rows: card.toSpliced(to, 0, ...copies) }
}

/** Turns a card over sideways: column 1 becomes the last. */
export const mirrorCard = (card: Card): Card =>
  card.map((row) => {
    let mirrored = 0
    for (let column = 1; column <= columns; column++)
      if (hasHole(row, toColumn(column))) mirrored |= columnBit(toColumn(columns + 1 - column))
    return mirrored
  })

/** Turns a card upside down: the last row becomes the first. */
export const turnCard = (card: Card): Card => card.toReversed()

/** By how much something of `length` places has really moved: 0 or more, less than its length. */
const within = (by: number, length: number): number => ((by % length) + length) % length

/** Moves all holes by so many columns towards the last; what leaves at one edge comes in at the other. */
export const shiftColumns = (card: Card, by: number): Card => {
  const shift = within(by, columns)
  return card.map((row) => ((row >> shift) | (row << (columns - shift))) & everyHole)
}

/** Moves all rows so many places later; the last come in before the first. */
export const shiftRows = (card: Card, by: number): Card => {
  const shift = within(by, card.length)
  return shift === 0 ? card : [...card.slice(-shift), ...card.slice(0, -shift)]
}
