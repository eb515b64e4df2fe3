import { at } from '../../mechanism/lookup.ts'
import { type Card, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toColumn } from '../../mechanism/indices.ts'

/** How many columns wide and rows high a small card is drawn: enough rows that short cards are seen to repeat. */
export const smallCard = { columns: dimensions.columns, rows: 24 } as const

/**
 * The holes of so many rows of a card, repeated as the card repeats, as runs of a line as wide as a row; row 1 at the
 * bottom.
 */
export const holeRuns = (card: Card, rows: number): string =>
  Array.from({ length: rows }, (_, n) => {
    const row = at(card, n % card.length)
    let runs = ''
    for (let column = 1; column <= smallCard.columns; column++) {
      if (!hasHole(row, toColumn(column))) continue
      let width = 1
      while (column + width <= smallCard.columns && hasHole(row, toColumn(column + width))) width++
      runs += `M${column - 1},${rows - n - 0.5}h${width}`
      column += width - 1
    }
    return runs
  }).join('')
