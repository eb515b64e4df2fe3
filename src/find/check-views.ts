import { type CardPlace, wayOfPass, type Way } from '../mechanism/bed.ts'
import { everyHole } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { speeds } from './battery.ts'
import type { PassCheckId } from './checks.ts'
import { type CardAndPasses, passesInQuestion } from './query.ts'
import { rowDue, type View, viewsOf } from './view.ts'

/** A view of a card of one row that is not the card in question. */
const viewOfRow = (row: number, way: Way, speed: number, { columnOne }: CardPlace): View => ({
  card: [row],
  pass: way === 1 ? 1 : 2,
  speed,
  shift: null,
  columnOne,
})

const lastView = (query: CardAndPasses): View | null =>
  query.card && (viewsOf(query.card, passesInQuestion(query), query).at(-1) ?? null)

/** The view after the last one: the next row, the other way. */
const nextRow = (query: CardAndPasses): View | null => {
  const last = lastView(query)
  return last && { ...last, pass: last.pass + 1 }
}

/** The row noted last once more, the same way, at another speed in mm/s. */
const lastRowAt = (query: CardAndPasses, speed: number): View | null => {
  const last = lastView(query)
  return (
    last && (viewsOf(query.card, [{ row: rowDue(last), way: wayOfPass(last.pass), speed }], query)[0] ?? null)
  )
}

/** The view that a check's pass takes after a query's passes; null where it needs a card or a pass that isn't there. */
export const viewOfCheck = (id: PassCheckId, query: CardAndPasses): View | null => {
  switch (id) {
    case 'next-row':
      return nextRow(query)
    case 'row-fast':
      return lastRowAt(query, speeds.fast)
    case 'row-slow':
      return lastRowAt(query, speeds.slow)
    case 'holes-right':
      return viewOfRow(everyHole, 1, dimensions.speed, query)
    case 'holes-left':
      return viewOfRow(everyHole, -1, dimensions.speed, query)
    case 'blank-right':
      return viewOfRow(0, 1, dimensions.speed, query)
    case 'blank-fast':
      return viewOfRow(0, 1, speeds.fast, query)
    case 'no-card':
      return { card: null, pass: 1, speed: dimensions.speed, shift: null, columnOne: query.columnOne }
  }
}
