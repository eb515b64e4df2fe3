import { passEnds, wholeBed } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { faultId, roundNumber } from '../mechanism/fault.ts'
import { encodeCard } from './card-text.ts'
import { writeCarriagePosition, writeBed } from './carriage-position.ts'
import type { CardChoice, CardLibrary, State } from './state.ts'

const cardValue = (card: CardChoice): string => {
  if (card.kind === 'none') return 'none'
  return card.kind === 'own' ? `x.${encodeCard(card.rows)}` : card.id
}

/**
 * Writes a state in its one canonical form: keys in a fixed order, defaults left out, faults sorted, numbers to four
 * decimals.
 */
export const write = (state: State, library: CardLibrary): string => {
  const pairs = new URLSearchParams()
  const add = (key: string, value: string, isDefault: boolean): void => {
    if (!isDefault) pairs.append(key, value)
  }
  const addNumber = (key: string, value: number, usual: number): void => {
    const rounded = roundNumber(value)
    add(key, String(rounded), rounded === usual)
  }
  const isWhole = state.bed.first === wholeBed.first && state.bed.last === wholeBed.last
  add('card', cardValue(state.card), state.card.kind === 'site' && state.card.id === library.main)
  addNumber('pass', state.pass, 1)
  const { start } = passEnds(state.pass, state.bed)
  add('at', writeCarriagePosition(state.at), roundNumber(state.at) === start)
  for (const id of state.faults.map(faultId).sort()) add('break', id, false)
  addNumber('speed', state.speed, dimensions.speed)
  addNumber('wear', state.wear, 0)
  addNumber('seed', state.seed, 1)
  add('needles', writeBed(state.bed), isWhole)
  add('note', state.note, state.note === '')
  return pairs.toString()
}
