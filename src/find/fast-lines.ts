import { lastOf } from '../mechanism/lookup.ts'
import { columnChances, type Reader, readers } from './chances.ts'
import type { Hidden } from './hidden.ts'
import type { Peaks } from './peaks.ts'
import { type ColumnParts, columnParts, type ColumnState, type FastSums } from './strip-sums.ts'

/** What a column may be, in the order in which its parts are listed. */
export const columnStates = [
  'sound',
  'worn',
  'hole',
  'dead',
  'high',
  'sticky',
  'other',
  'over',
] as const satisfies readonly ColumnState[]
export const stateCount = columnStates.length

/**
 * The parts of what a column adds up to on a strip that follows at once: straight lines in the chance that its pushes suffice
 * with each certainty. By state, first where no push suffices, then by certainty what is added with the chance that one does.
 */
export type FastLine = Float64Array

/** By reader, by set of columns that stay pushed over, by column. */
export type FastLines = readonly (readonly (readonly FastLine[])[])[]

const overState = columnStates.indexOf('over')

/** Writes what is added by pushes that suffice with a certainty, from `from` on; and where the base is. */
const writeParts = (line: FastLine, from: number, parts: ColumnParts, minus: ColumnParts | null): void => {
  for (let state = 0; state < overState; state++) {
    const name = columnStates[state] as keyof ColumnParts
    line[from + state] = parts[name] - (minus ? minus[name] : 0)
  }
}

const lineOf = (columns: readonly FastSums[number][], reader: Reader): FastLine => {
  const line = new Float64Array(stateCount * (1 + columns.length))
  // The last is that of certain pushes, which are summed most closely.
  const exact = lastOf(columns)
  const none = typeof exact === 'number' ? null : columnParts(exact, reader, 0)
  if (none) writeParts(line, 0, none, null)
  for (const [g, column] of columns.entries()) {
    const from = stateCount * (1 + g)
    if (typeof column === 'number') line[from + overState] = columnChances[reader].over * column
    else writeParts(line, from, columnParts(column, reader, 1), none)
  }
  return line
}

/** The lines of a strip; `columns` are by certainty, the last where pushes are certain, and by set that stays pushed over. */
export const fastLinesOf = (columns: readonly (readonly FastSums[])[]): FastLines =>
  readers.map((reader) =>
    columns[0]!.map((_, set) =>
      [0, 1, 2].map((n) =>
        lineOf(
          columns.map((sums) => sums[set]![n]!),
          reader,
        ),
      ),
    ),
  )

/** By state, what a line comes to with `none` of its base, and `share` of what is added with a certainty. */
export const partsWith = (line: FastLine, none: number, certainty: number, share: number): Float64Array => {
  const parts = new Float64Array(stateCount)
  const from = stateCount * (1 + certainty)
  for (let state = 0; state < stateCount; state++)
    parts[state] = none * line[state]! + share * line[from + state]!
  return parts
}

/** By state, what a column adds up to in a hidden state. */
export const partsOf = (line: FastLine, { wear, pivots }: Hidden, peaks: Peaks): Float64Array => {
  const count = line.length / stateCount - 1
  if (pivots === 0) return partsWith(line, 1, count - 1, peaks.sufficient[wear]!)
  const parts = line.slice(0, stateCount)
  const shares = peaks.certaintyChances()[wear]![pivots]!
  for (let g = 0; g < count; g++)
    for (let state = 0; state < stateCount; state++)
      parts[state]! += shares[g]! * line[stateCount * (1 + g) + state]!
  return parts
}

/** By certainty, and first for the base: the sum of a line over states. */
const totalsOf = (line: FastLine): Float64Array => {
  const totals = new Float64Array(line.length / stateCount)
  for (let n = 0; n < line.length; n++) totals[Math.floor(n / stateCount)]! += line[n]!
  return totals
}

/** The lines of a strip, each added up over states: as `totalsOf` has them. */
export const lineTotalsOf = (lines: FastLines): FastLines =>
  lines.map((sets) => sets.map((set) => set.map(totalsOf)))

/** What a strip adds up to in a hidden state, where it follows at once and a set of its columns stays pushed over. */
export const setValue = (set: readonly FastLine[], { wear, pivots }: Hidden, peaks: Peaks): number => {
  const suffices = peaks.sufficient[wear]!
  const shares = pivots === 0 ? null : peaks.certaintyChances()[wear]![pivots]!
  let product = 1
  for (const sums of set) {
    const count = sums.length - 1
    let value = sums[0]!
    if (shares) for (let g = 0; g < count; g++) value += shares[g]! * sums[1 + g]!
    else value += suffices * sums[count]!
    // A line that comes to next to nothing may round to less than that.
    product *= Math.max(0, value)
  }
  return product
}

/** By hidden state, what a strip adds up to, where it follows at once; `totals` are its lines' totals. */
export const fastValues = (totals: FastLines, hidden: readonly Hidden[], peaks: Peaks): Float64Array =>
  Float64Array.from(hidden, (one) =>
    totals[one.reader]!.reduce((total, set) => total + setValue(set, one, peaks), 0),
  )
