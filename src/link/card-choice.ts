import { decodeCard, encodeCard } from './card-text.ts'
import type { CardChoice, CardLibrary } from './state.ts'

/** What came of reading a link's card: the choice, perhaps with what was cut off it, or why there is none. */
export type CardChoiceReading =
  | { readonly kind: 'read'; readonly choice: CardChoice }
  | { readonly kind: 'cut'; readonly choice: CardChoice; readonly remark: string }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'unreadable'; readonly reason: string }

/** What comes before the rows of a card that travels in the link. */
const ownMark = 'x.'

/** Writes a choice so that `readCardChoice` gives it back. */
export const writeCardChoice = (card: CardChoice): string => {
  switch (card.kind) {
    case 'none':
      return 'none'
    case 'own':
      return `${ownMark}${encodeCard(card.rows)}`
    case 'site':
      return card.id
  }
}

/** Reads `none`, the id of one of the library's cards, or `x.` and the rows themselves. Never throws. */
export const readCardChoice = (text: string, library: CardLibrary): CardChoiceReading => {
  if (text === 'none') return { kind: 'read', choice: { kind: 'none' } }
  if (!text.startsWith(ownMark))
    return library.cards.has(text)
      ? { kind: 'read', choice: { kind: 'site', id: text } }
      : { kind: 'unknown' }
  const reading = decodeCard(text.slice(ownMark.length))
  if (!reading.rows) return { kind: 'unreadable', reason: reading.reason }
  const choice: CardChoice = { kind: 'own', rows: reading.rows }
  return reading.remark === null ? { kind: 'read', choice } : { kind: 'cut', choice, remark: reading.remark }
}

/** Whether two choices are the same card. */
export const sameCard = (one: CardChoice, other: CardChoice): boolean =>
  writeCardChoice(one) === writeCardChoice(other)
