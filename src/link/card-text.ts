import { type Card, type RowHoles, columnBit, hasHole, mostRows } from '../mechanism/card.ts'
import { allColumns, toColumn } from '../mechanism/indices.ts'
import { quote } from './troubles.ts'

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** A card in a link: four base64url characters a row, as RFC 4648 section 5 numbers them, column 1 the highest bit. */
export const encodeCard = (rows: Card): string =>
  rows.map((row) => [18, 12, 6, 0].map((shift) => alphabet.charAt((row >> shift) & 63)).join('')).join('')

/** What came of reading a card: its rows (at least one) and a remark where something was left out, or a reason. */
export type CardReading =
  | { readonly rows: Card; readonly remark: string | null }
  | { readonly rows: null; readonly reason: string }

/** Reads what `encodeCard` writes. Keeps the whole rows of a card that is cut short or too long, and says so. */
export const decodeCard = (text: string): CardReading => {
  const bad = Array.from(text).find((character) => !alphabet.includes(character))
  if (bad !== undefined) return { rows: null, reason: `${quote(bad)} has no place in a card` }
  const rows: RowHoles[] = []
  for (let n = 0; n + 4 <= text.length && rows.length < mostRows; n += 4)
    rows.push([0, 1, 2, 3].reduce((row, k) => row * 64 + alphabet.indexOf(text.charAt(n + k)), 0))
  if (rows.length === 0) return { rows: null, reason: 'it has no whole row of 24 columns' }
  if (text.length === 4 * rows.length) return { rows, remark: null }
  return rows.length === mostRows
    ? { rows, remark: `it has more than ${mostRows} rows, so the first ${mostRows} stand` }
    : { rows, remark: `row ${rows.length + 1} is not 24 columns wide, so the ${rows.length} before it stand` }
}

/** A hole in a card file, and the mark that means card without one. */
const holeMark = 'o'
const blankMark = '.'

/** A row as 24 characters, column 1 first. */
export const rowText = (row: RowHoles): string =>
  allColumns.map((column) => (hasHole(row, column) ? holeMark : blankMark)).join('')

/** A card's file: its title, a line about it, and its rows. */
export interface CardFile {
  readonly title: string
  readonly about: string
  readonly rows: Card
}

/**
 * Reads a card's file: `title: …`, `about: …`, an empty line, then 24 characters a row, `o` for a hole and `.` for
 * none. Throws an Error that names the line where the file is not so: cards are ours, and a bad one must not build.
 */
export const readCardFile = (text: string): CardFile => {
  const lines = text.split(/\r?\n/)
  const field = (n: number, name: string): string => {
    const line = lines[n] ?? ''
    const value = line.startsWith(`${name}: `) ? line.slice(name.length + 2).trim() : ''
    if (value === '') throw new Error(`line ${n + 1}: expected “${name}: …”, found “${line}”`)
    return value
  }
  const title = field(0, 'title')
  const about = field(1, 'about')
  if (lines[2]) throw new Error(`line 3: expected an empty line, found “${lines[2]}”`)
  const rows = lines.slice(3).flatMap((line, n): RowHoles[] => {
    if (line === '' && n === lines.length - 4) return []
    if (!/^[o.]{24}$/.test(line))
      throw new Error(`line ${n + 4}: expected 24 characters, each “o” or “.”, found “${line}”`)
    return [
      Array.from(line).reduce(
        (row, mark, c) => (mark === holeMark ? row | columnBit(toColumn(c + 1)) : row),
        0,
      ),
    ]
  })
  if (rows.length === 0 || rows.length > mostRows)
    throw new Error(`expected 1 to ${mostRows} rows, found ${rows.length}`)
  return { title, about, rows }
}
