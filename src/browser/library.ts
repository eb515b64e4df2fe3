import { decodeCard } from '../link/card-text.ts'
import type { CardLibrary } from '../link/state.ts'
import type { Card } from '../mechanism/card.ts'

/** The site's cards, as a page carries them. */
export const libraryOf = (text: string): CardLibrary => {
  const { main, cards } = JSON.parse(text) as { main: string; cards: Record<string, string> }
  const read = (code: string): Card => decodeCard(code).rows ?? [0]
  return { main, cards: new Map(Object.entries(cards).map(([id, code]) => [id, read(code)])) }
}
