import type { Card } from '../mechanism/card.ts'
import { encodeCard, readCardFile } from '../link/card-text.ts'
import { type CardLibrary, mainCard } from '../link/state.ts'

/** A card of the site as the page carries it: its rows in the form that links use. */
export interface SiteCard {
  readonly id: string
  readonly title: string
  readonly about: string
  readonly rows: Card
  readonly code: string
}

const files = import.meta.glob<string>('../../content/cards/*.txt', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** All cards of the site, the main one first, those that show nothing but holes or none last. */
export const siteCards: readonly SiteCard[] = Object.entries(files)
  .map(([path, text]) => {
    const id = path.replace(/^.*\/(.*)\.txt$/, '$1')
    try {
      const { title, about, rows } = readCardFile(text)
      return { id, title, about, rows, code: encodeCard(rows) }
    } catch (error) {
      throw new Error(`content/cards/${id}.txt: ${error instanceof Error ? error.message : String(error)}`)
    }
  })
  .sort((a, b) => rank(a) - rank(b) || a.title.localeCompare(b.title, 'en'))

/** 0 for the main card, 2 for cards with one kind of row only, 1 for the rest. */
function rank({ id, rows }: { id: string; rows: Card }): number {
  if (id === mainCard) return 0
  return rows.every((row) => row === rows[0]) ? 2 : 1
}

/** The library that links are read with, while the site is built. */
export const siteLibrary: CardLibrary = {
  main: mainCard,
  cards: new Map(siteCards.map(({ id, rows }) => [id, rows])),
}

/** The patterned card that faults are looked at with: the site's main one. */
export const patternCard: Card = siteLibrary.cards.get(mainCard) ?? [0]
