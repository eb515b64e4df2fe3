import type { CardPlace } from '../mechanism/bed.ts'
import { type Card, everyHole } from '../mechanism/card.ts'
import type { Fault } from '../mechanism/fault.ts'
import { confusedWith } from './best-course.ts'
import type { RequestedPass } from './check-outcomes.ts'
import { inferWhole } from './infer.ts'
import { nextLooks } from './next.ts'
import { needlesWith } from './practice.ts'
import { slips } from './chances.ts'
import { kindAndPlace, type NotedPass, type Query } from './query.ts'

/** The most passes of a course: what no pass tells apart needs a look at the parts. */
const longest = 6

const passFor = ({ card: asked, row, way, speed }: RequestedPass, own: Card | null): NotedPass => {
  const cards = { same: own, none: null, 'all-holes': [everyHole], blank: [0] }
  return { card: cards[asked], row, way, speed, needles: '' }
}

/** Whether passes tell a fault from all that any pass tells it from. */
const isParted = (fault: Fault, query: Query, alike: readonly Fault[]): boolean => {
  const { faults, isSound } = confusedWith(fault, query)
  const left = new Set(alike.map(kindAndPlace))
  return !isSound && faults.every((other) => left.has(kindAndPlace(other)))
}

/** The passes of a query as they come out on a machine with a fault. */
const withNeedles = (query: Query, fault: Fault): Query => {
  const beds = needlesWith(query, fault)
  return { ...query, passes: query.passes.map((pass, n) => ({ ...pass, needles: beds[n]! })) }
}

/**
 * The course that the page's own advice takes to a fault without knowing it: the pass that settles most for its time
 * each time, until what is left looks alike to every pass. Greedy: a cheaper course may exist.
 */
export const advisedCourse = (
  fault: Fault,
  first: NotedPass,
  { columnOne }: CardPlace,
  alike: readonly Fault[] = [],
): NotedPass[] => {
  const passes = [first]
  const query: Query = { card: first.card, passes, slip: slips.sure, checks: [], columnOne }
  while (passes.length < longest && !isParted(fault, query, alike)) {
    const noted = withNeedles(query, fault)
    const next = nextLooks(noted, inferWhole(noted)).find(({ pass }) => pass !== null)?.pass
    if (!next) break
    passes.push(passFor(next, first.card))
  }
  return passes
}
