import type { CardPlace } from '../mechanism/bed.ts'
import { type Card, everyHole } from '../mechanism/card.ts'
import type { Fault } from '../mechanism/fault.ts'
import { confusedWith } from './best-course.ts'
import type { RequestedPass } from './check-outcomes.ts'
import { type Inference, inferWhole } from './infer.ts'
import { nextLooks } from './next.ts'
import type { DealtMachine } from './deal-machine.ts'
import { type Place, placeOfFault } from './place.ts'
import { needlesWith, shownFaults } from './practice.ts'
import { slips } from './chances.ts'
import { type CheckMade, kindAndPlace, type NotedPass, type Query } from './query.ts'

/** The most passes of a course: what no pass distinguishes needs a look at the parts. */
const longest = 8
/** With several faults the first pass may show but one: so many passes are made at least. */
const least = 3

const passFor = ({ card: asked, row, way, speed }: RequestedPass, own: Card | null): NotedPass => {
  const cards = { same: own, none: null, 'all-holes': [everyHole], blank: [0] }
  return { card: cards[asked], row, way, speed, needles: '' }
}

/** Whether passes distinguish a fault from all that any pass does. */
const isParted = (fault: Fault, query: Query, alike: readonly Fault[]): boolean => {
  const { faults, isSound } = confusedWith(fault, query)
  const left = new Set(alike.map(kindAndPlace))
  return !isSound && faults.every((other) => left.has(kindAndPlace(other)))
}

/** The passes of a query as they come out on a machine. */
const withNeedles = (query: Query, machine: DealtMachine): Query => {
  const beds = needlesWith(query, machine)
  return { ...query, passes: query.passes.map((pass, n) => ({ ...pass, needles: beds[n]! })) }
}

/** From this chance on a place counts as found. */
const found = 0.95

/** Whether every fault of a machine that shows in a query's passes is at a place that is found. */
const areFound = (query: Query, { finding }: Inference, machine: DealtMachine): boolean => {
  const places = new Set(finding.places.flatMap(({ place, wrong }) => (wrong > found ? [place] : [])))
  return shownFaults(query, machine).every((fault) => places.has(placeOfFault(fault)))
}

const isGone = ({ kind }: Fault): boolean => kind === 'needle.gone'

/** The course that the page's own advice takes on a machine, and the places that it then names. */
export interface AdvisedCourse {
  readonly passes: readonly NotedPass[]
  readonly places: readonly Place[]
}

/**
 * The course that the page's own advice takes without knowing the machine: the pass that settles most for its time
 * each time. With one fault until what is left looks alike to every pass; with more until each that shows is found, after
 * at least `least` passes. Greedy: a cheaper course may exist.
 */
export const advisedCourse = (
  machine: DealtMachine,
  first: NotedPass,
  { columnOne }: CardPlace,
  alike: readonly Fault[] = [],
): AdvisedCourse => {
  const passes = [first]
  const checks: CheckMade[] = []
  const query: Query = { card: first.card, passes, slip: slips.sure, checks, columnOne }
  const [only, ...others] = machine.faults
  for (;;) {
    const noted = withNeedles(query, machine)
    const inference = inferWhole(noted)
    const isDone =
      only && others.length === 0
        ? isParted(only, query, alike)
        : passes.length >= least && areFound(noted, inference, machine)
    const looks = isDone || passes.length >= longest ? [] : nextLooks(noted, inference)
    if (looks[0]?.check === 'broken-piece' && checks.length === 0) {
      // Nothing moves before the piece is found; then the passes go on.
      checks.push({ check: 'broken-piece', found: machine.faults.find(isGone) ?? null })
      continue
    }
    const next = looks.find(({ pass }) => pass !== null)?.pass
    if (!next) {
      const places = inference.finding.places.flatMap(({ place, wrong }) => (wrong > 0.5 ? [place] : []))
      return { passes, places }
    }
    passes.push(passFor(next, first.card))
  }
}
