import { writeTable } from './codec.ts'
import type { CardLibrary, State } from './state.ts'
import { stateTable } from './state-table.ts'

/**
 * Writes a state in its one canonical form, which `read` gives back: keys in the table's order, defaults left out,
 * faults sorted, numbers to four decimals.
 *
 * @example
 * write({ ...defaultState(library), pass: 3, speed: 900 }, library) // 'pass=3&speed=900'
 */
export const write = (state: State, library: CardLibrary): string =>
  writeTable({ ...state, version: 1 }, stateTable, library)
