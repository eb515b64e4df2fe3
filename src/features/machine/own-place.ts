import { element, setText } from '../../browser/dom.ts'
import { createStore, type Store } from '../../browser/store.ts'
import { shiftTo } from '../../link/reader-place.ts'
import { type CardPlace, canonicalPlace, needleName, usualPlace } from '../../mechanism/bed.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import type { Machine } from './main.ts'

/** Where column 1 is on the reader's own machine, as the address said it when the page was opened or edited. */
export type OwnPlace = Store<CardPlace, 'reader' | 'class'>

export const createOwnPlace = (given: CardPlace): OwnPlace =>
  createStore<CardPlace, 'reader' | 'class'>(
    canonicalPlace(given),
    'reader',
    (one, other) => canonicalPlace(one).columnOne === canonicalPlace(other).columnOne,
  )

/** What the page says where column 1 is not at R1, as the text has it; nothing where it is. */
const placeWords = (place: CardPlace): string => {
  if (shiftTo(place) === 0) return ''
  const seen = needleName(toNeedle(usualPlace.columnOne + shiftTo(place)))
  return `Column 1 is at ${needleName(canonicalPlace(place).columnOne)} on this machine: what the text says of R1 is seen at ${seen}, and so on along the bed.`
}

/**
 * Says after `spot` where column 1 is on the reader's machine, where the text has it elsewhere, with a button that puts it
 * at R1; `again` then shows what the text has there.
 */
export const showOwnPlace = ({ ownPlace }: Machine, spot: HTMLElement, again: () => void): void => {
  const words = element('span')
  const button = element('button', { type: 'button' }, ['Put column 1 at R1'])
  const line = element('p', { class: 'own-place' }, [words, ' ', button])
  const show = (): void => {
    setText(words, placeWords(ownPlace.now()))
    line.hidden = shiftTo(ownPlace.now()) === 0
  }
  button.addEventListener('click', () => {
    ownPlace.set(usualPlace)
    again()
  })
  ownPlace.listen(show)
  show()
  spot.after(line)
}
