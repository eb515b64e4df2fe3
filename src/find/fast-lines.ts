import { columnChances, readers } from './chances.ts'
import type { Hidden } from './hidden.ts'
import { certaintyChances, sufficientChances } from './peaks.ts'
import { columnParts, type ColumnState, type FastSums } from './strip-sums.ts'

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
 * with each certainty.
 */
interface Line {
  /** By state: where no push suffices, and by certainty what is added with the chance that one does. */
  readonly base: Float64Array
  readonly gains: readonly Float64Array[]
}

/** By reader, by set of columns that stay pushed over, by column. */
export type FastLines = readonly (readonly (readonly Line[])[])[]

const partsAt = (
  column: FastSums[number],
  reader: (typeof readers)[number],
  suffices: number,
): Float64Array => {
  if (typeof column === 'number') {
    const all = new Float64Array(stateCount)
    all[columnStates.indexOf('over')] = suffices * columnChances[reader].over * column
    return all
  }
  const parts = columnParts(column, reader, suffices)
  return Float64Array.from(columnStates, (state) => (state === 'over' ? 0 : parts[state]))
}

/** The lines of a strip; `columns` are by certainty, the last where pushes are certain, and by set that stays pushed over. */
export const fastLinesOf = (columns: readonly (readonly FastSums[])[]): FastLines =>
  readers.map((reader) =>
    columns[0]!.map((_, set) =>
      [0, 1, 2].map((n): Line => {
        const none = columns.map((sums) => partsAt(sums[set]![n]!, reader, 0))
        return {
          base: none.at(-1)!,
          gains: columns.map((sums, g) => {
            const own = none[g]!
            return partsAt(sums[set]![n]!, reader, 1).map((value, state) => value - own[state]!)
          }),
        }
      }),
    ),
  )

/** By state, what a column adds up to in a hidden state. */
export const partsOf = ({ base, gains }: Line, { wear, pivots }: Hidden): Float64Array => {
  const parts = base.slice()
  const add = (gain: Float64Array, share: number): void => {
    for (let state = 0; state < stateCount; state++) parts[state]! += share * gain[state]!
  }
  if (pivots === 0) add(gains[gains.length - 1]!, sufficientChances()[wear]!)
  else for (const [g, share] of certaintyChances()[wear]![pivots]!.entries()) add(gains[g]!, share)
  return parts
}

const sumOf = (values: Float64Array): number => {
  let sum = 0
  for (let n = 0; n < values.length; n++) sum += values[n]!
  return sum
}

/** What a strip adds up to in a hidden state, where it follows at once. */
export const fastValue = (lines: FastLines, hidden: Hidden): number => {
  let total = 0
  for (const set of lines[hidden.reader]!) {
    let product = 1
    for (const line of set) product *= sumOf(partsOf(line, hidden))
    total += product
  }
  return total
}
