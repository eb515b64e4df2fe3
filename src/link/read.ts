import { type Pair, readTable } from './codec.ts'
import type { CardLibrary, State } from './state.ts'
import { stateOf, stateTable } from './state-table.ts'
import { quote, type Trouble, type Troubles } from './troubles.ts'

/** A state, always whole, and what there is to say about how it was read. */
export interface Reading {
  readonly state: State
  readonly troubles: readonly Trouble[]
}

/** Says which keys of a state's or a case's link are unknown. */
export const sayUnknownKeys = (strangers: readonly Pair[], troubles: Troubles): void => {
  for (const key of new Set(strangers.map(([name]) => name)))
    if (key.trim() === '')
      troubles.leftOut('nameless key', 'The link has a value without a name.', ', which is left out.')
    else troubles.leftOut('unknown key', `This site doesn't know ${quote(key)}.`, ', so it is left out.')
}

/**
 * Reads a link's text (with or without its `#`). Never throws and always gives a whole state; what can't be read is
 * left out, numbers out of range are clamped, of two contradicting faults the later is kept, and each is said.
 *
 * @example
 * const { state, troubles } = read('pass=3&at=R12.5&break=strip.3.seized&speed=9000', library)
 * state.pass // 3
 * state.speed // 2000, and troubles[0].sentence says that 9000 is outside 50 to 2000
 */
export const read = (text: string, library: CardLibrary): Reading => {
  const { whole, troubles } = readTable(text, stateTable, library, sayUnknownKeys)
  return { state: stateOf(whole), troubles }
}

/** What an empty link means. */
export const defaultState = (library: CardLibrary): State => read('', library).state
