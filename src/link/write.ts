import { passEnds, wholeBed } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { faultId } from '../mechanism/fault.ts'
import { encodeCard } from './card-text.ts'
import { writeAt, writeBed } from './place.ts'
import type { CardChoice, CardLibrary, State } from './state.ts'

const cardValue = (card: CardChoice): string => {
  if (card.kind === 'none') return 'none'
  return card.kind === 'own' ? `x.${encodeCard(card.rows)}` : card.id
}

/** Writes a state in its one canonical form: keys in a fixed order, defaults left out, faults sorted. */
export const write = (state: State, library: CardLibrary): string => {
  const pairs = new URLSearchParams()
  const add = (key: string, value: string, isDefault: boolean): void => {
    if (!isDefault) pairs.append(key, value)
  }
  const isWhole = state.bed.first === wholeBed.first && state.bed.last === wholeBed.last
  add('card', cardValue(state.card), state.card.kind === 'site' && state.card.id === library.main)
  add('pass', String(state.pass), state.pass === 1)
  add('at', writeAt(state.at), state.at === passEnds(state.pass, state.bed).start)
  for (const id of state.faults.map(faultId).sort()) add('break', id, false)
  add('speed', String(state.speed), state.speed === dimensions.speed)
  add('wear', String(state.wear), state.wear === 0)
  add('seed', String(state.seed), state.seed === 1)
  add('needles', writeBed(state.bed), isWhole)
  add('note', state.note, state.note === '')
  return pairs.toString()
}
