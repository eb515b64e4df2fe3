import { wayOfPass, type Way } from '../mechanism/bed.ts'
import { everyHole, type RowHoles } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { speeds } from './battery.ts'
import { checkOf, minutesForCard, type PassCheckId } from './checks.ts'
import { type CardAndPasses, isSameCard, passesInQuestion } from './query.ts'
import { placeOnly, rowDue, type View, viewsOf } from './view.ts'

/** A pass that somebody may make next. */
export interface PossiblePass {
  readonly check: PassCheckId
  readonly view: View
  readonly minutes: number
}

/** The most other rows of a card that are tried, at each speed: rows with the same holes show the same. */
const mostRows = 10

const everySpeed = [speeds.ordinary, speeds.slow, speeds.fast] as const

/** A view of a card of one row that is not the card in question. */
const viewOfRow = (row: RowHoles, way: Way, query: CardAndPasses): View => ({
  card: [row],
  pass: way === 1 ? 1 : 2,
  speed: dimensions.speed,
  shift: null,
  ...placeOnly(query),
})

/** The last view with the card in question; null where no pass was made with it, or where there is no card. */
const lastView = (query: CardAndPasses): View | null =>
  query.card && (viewsOf(query.card, passesInQuestion(query), query).at(-1) ?? null)

/** A row of the card in question, by itself. */
const rowBy = (query: CardAndPasses, row: number, way: Way): View | null =>
  viewsOf(query.card, [{ row, way, speed: dimensions.speed }], query)[0] ?? null

/** Rows of the card beside the last and the next, each as read on its usual way; no two with the same holes. */
const otherRows = (query: CardAndPasses, last: View | null): View[] => {
  const { card } = query
  if (!card) return []
  const known = new Set<RowHoles>()
  const due = last && rowDue(last)
  const skipped = new Set<number>(due === null ? [] : [due, (due % card.length) + 1])
  return card.flatMap((holes, n) => {
    if (skipped.has(n + 1) || known.has(holes) || known.size >= mostRows) return []
    known.add(holes)
    return rowBy(query, n + 1, n % 2 === 0 ? 1 : -1) ?? []
  })
}

const withSpeeds = (check: PassCheckId, view: View, list: readonly number[] = everySpeed) =>
  list.map((speed) => ({ check, view: { ...view, speed } }))

/** The last row once more: as it was, faster, or slower. */
const lastAgain = (query: CardAndPasses, last: View): { check: PassCheckId; view: View }[] => {
  const again = rowBy(query, rowDue(last) ?? 1, wayOfPass(last.pass)) ?? last
  return [
    ...withSpeeds('row-again', again, [last.speed]),
    ...(last.speed < speeds.fast ? withSpeeds('row-fast', again, [speeds.fast]) : []),
    ...(last.speed > speeds.slow ? withSpeeds('row-slow', again, [speeds.slow]) : []),
  ]
}

/** How long a pass takes: a card that is in the reader already need not be put in. */
const minutesOf = (query: CardAndPasses, check: PassCheckId, view: View): number => {
  const { minutes } = checkOf(check)
  if (view.card === null) return minutes
  const before = query.passes.at(-1)?.card ?? query.card
  const needed = view.shift === null && view.card.length === 1 ? view.card : query.card
  const isOwn = isSameCard(needed, query.card)
  const isIn = isSameCard(before, needed)
  if (isOwn) return isIn ? minutes : minutes + minutesForCard
  return isIn ? minutes - minutesForCard : minutes
}

/**
 * Every pass that may be made after a query's: any row of its card, a card of all holes, a blank one and none, either
 * way, slowly, at the ordinary speed and fast, and the last row again. The next row comes first.
 */
export const possiblePasses = (query: CardAndPasses): PossiblePass[] => {
  const last = lastView(query)
  const none = { ...viewOfRow(0, 1, query), card: null }
  const views = [
    ...(last ? withSpeeds('next-row', { ...last, pass: last.pass + 1 }) : []),
    ...(last ? lastAgain(query, last) : []),
    ...otherRows(query, last).flatMap((view) => withSpeeds('other-row', view)),
    ...withSpeeds('holes-right', viewOfRow(everyHole, 1, query)),
    ...withSpeeds('holes-left', viewOfRow(everyHole, -1, query)),
    ...withSpeeds('blank-right', viewOfRow(0, 1, query)),
    ...withSpeeds('blank-left', viewOfRow(0, -1, query)),
    ...withSpeeds('no-card', none, [dimensions.speed]),
  ]
  return views.map(({ check, view }) => ({ check, view, minutes: minutesOf(query, check, view) }))
}
