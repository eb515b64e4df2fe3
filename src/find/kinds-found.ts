import { usualPlace, wayOfPass } from '../mechanism/bed.ts'
import type { Fault } from '../mechanism/fault.ts'
import { startRun } from '../mechanism/pass.ts'
import { slips } from './chances.ts'
import { type Dictionary, type Entry, groupBy } from './dictionary.ts'
import { infer } from './infer.ts'
import { type Letters, lettersOf } from './bed-letters.ts'
import { placeOfFault } from './place.ts'
import type { NotedPass, Query } from './query.ts'
import type { TestCard } from './test-card.ts'
import { rowDue, scenarioIn, type View } from './view.ts'

/** How often what was broken was found. */
export interface Score {
  readonly tried: number
  readonly found: number
  /** What was not found, by ids. */
  readonly missed: readonly string[]
}

/** The beds that the whole model leaves in a dictionary's views, with these faults, noted without error. */
export const bedsOf = (
  { views }: Pick<Dictionary, 'views'>,
  faults: readonly Fault[],
  seed: number,
): Letters[] =>
  views.map((view) => lettersOf(startRun({ ...scenarioIn(view, faults), seed }).passOf(view.pass)))

const notedPass = (view: View, needles: Letters): NotedPass => ({
  card: view.card,
  row: rowDue(view),
  way: wayOfPass(view.pass),
  speed: view.speed,
  pass: view.pass,
  needles,
})

/** A found place is likelier wrong than right. */
const likely = 0.5

/** Whether the search, given what a test card's passes show of a fault, names its place, or one that looks the same. */
const isFound = ({ card, dictionary, classes }: TestCard, { fault, key }: Entry): boolean => {
  const { views } = dictionary
  const beds = bedsOf(dictionary, [fault], 1)
  const query: Query = {
    card,
    ...usualPlace,
    slip: slips.sure,
    checks: [],
    passes: views.map((view, n) => notedPass(view, beds[n]!)),
  }
  const alike = classes.find((members) => members[0]!.key === key)!
  const places = new Set(alike.map((one) => placeOfFault(one.fault)))
  const { places: named, together } = infer(query)
  return (
    named.some(({ place, wrong }) => wrong > likely && places.has(place)) ||
    together.some(({ places: set }) => set.some((place) => places.has(place)))
  )
}

/**
 * Breaks one fault of each kind, looks at the test card's passes, and counts how often the search names its place. The
 * fault is the one in the middle of its kind's.
 */
export const kindsFound = (found: TestCard): Score => {
  const kinds = groupBy(found.dictionary.entries, ({ fault }) => fault.kind)
  const tried = kinds.map((entries) => entries[Math.floor(entries.length / 2)]!)
  const missed = tried.filter((entry) => !isFound(found, entry)).map(({ id }) => id)
  return { tried: tried.length, found: tried.length - missed.length, missed }
}
