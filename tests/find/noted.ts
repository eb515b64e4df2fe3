import { type Card, everyHole } from '@/mechanism/card.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { slips } from '@/find/chances.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { type NotedPass, type Query, viewsOfQuery } from '@/find/query.ts'
import { type MachinePlace, type Noted, placeOnly, scenarioIn } from '@/find/view.ts'
import { firstPasses } from './make.ts'

/** A pass that is yet to be noted, perhaps with another card than the one in question. */
export type Unnoted = Noted & { readonly card?: Card | null }

/** So many passes of the card in question from its first row on, then one of all holes and a fast one of none. */
export const mixedPasses = (rows: number, count: number): Unnoted[] => [
  ...firstPasses(rows, count, 500).map((pass, n) => ({ ...pass, pass: n + 1 })),
  { card: [everyHole], row: 1, way: 1, speed: 500 },
  { card: [0], row: 1, way: -1, speed: 900 },
]

/** A letter for each of these needles, and nothing noted of any other, as a pass has them. */
export const notesOf = (needles: readonly number[], letters: string): string =>
  allNeedles.map((needle) => letters.charAt(needles.indexOf(needle)) || '?').join('')

/** A query in which somebody noted every needle of these passes of a machine with these faults, without a slip. */
export const notedQuery = (
  card: Card | null,
  passes: readonly Unnoted[],
  ids: readonly FaultId[] = [],
  place: MachinePlace = usualPlace,
): Query => {
  const blank: NotedPass[] = passes.map((pass) => ({ card, ...pass, needles: '' }))
  const query: Query = { card, passes: blank, slip: slips.sure, checks: [], ...placeOnly(place) }
  const faults = ids.map(faultOf)
  const beds = viewsOfQuery(query).map((view) =>
    lettersOf(startRun(scenarioIn(view, faults)).passOf(view.pass)),
  )
  return { ...query, passes: blank.map((pass, n) => ({ ...pass, needles: beds[n]! })) }
}
