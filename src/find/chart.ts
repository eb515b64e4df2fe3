import type { Card } from '../mechanism/card.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import type { Outcome } from '../mechanism/gate.ts'
import type { Pass } from '../mechanism/pass.ts'
import { exampleOf, type Look, lookAt, standardLooks } from './battery.ts'
import { type PartCheck, partChecks } from './checks.ts'
import { plainestOf } from './contrast.ts'
import { groupBy } from './dictionary.ts'
import { firstShown, type Symptom, symptomOf, symptoms } from './likeness.ts'
import { howCommon } from './how-common.ts'

/** A row of the fault chart: what one sees, what may have done it, and what to look at first. */
export interface ChartRow {
  readonly symptom: Symptom
  /** How the wrong needles come out, where that parts the kinds of one symptom; null where it doesn't. */
  readonly came: Outcome | null
  /** What may be wrong, the most common first. */
  readonly kinds: readonly FaultKindName[]
  /** The look that shows the most common of them most plainly, and its pass. */
  readonly look: Look
  readonly pass: Pass
  /** The checks by eye or hand in the order in which to make them. */
  readonly checks: readonly PartCheck[]
}

/** Sights where missing and coming unasked have different causes. */
const directed: readonly Symptom[] = ['eighth', 'twentyFourth', 'one', 'oneRow']

const plainLook = (kind: FaultKindName, pattern: Card): Look =>
  plainestOf(kind, pattern) ?? firstShown(kind, pattern) ?? standardLooks[0]!

/** Whether a kind shows in some look with a card. */
const showsWith = (kind: FaultKindName, card: Look['card'], pattern: Card): boolean =>
  standardLooks.some(
    (look) => look.card === card && lookAt([exampleOf(kind)], look, pattern).departures.length > 0,
  )

/**
 * The look that shows the most common of some kinds most plainly, with a card that shows every one of them: what is
 * beside a picture must not be a kind that its card would leave sound.
 */
const lookOf = (kinds: readonly FaultKindName[], pattern: Card): Look => {
  const plainest = plainLook(kinds[0]!, pattern)
  const first = [exampleOf(kinds[0]!)]
  return (
    [plainest, ...standardLooks].find(
      (look) =>
        lookAt(first, look, pattern).departures.length > 0 &&
        kinds.every((kind) => showsWith(kind, look.card, pattern)),
    ) ?? plainest
  )
}

/** How the wrong needles of a kind come out in the look that shows it most plainly. */
const cameOf = (kind: FaultKindName, pattern: Card): Outcome =>
  lookAt([exampleOf(kind)], plainLook(kind, pattern), pattern).departures[0]?.came ?? 'plain'

/** How likely a check is to find one of these kinds, by how common they are, for its minutes and its risk. */
const worth = ({ shows, minutes, risk }: PartCheck, kinds: readonly FaultKindName[]): number =>
  kinds.filter((kind) => shows.includes(kind)).reduce((sum, kind) => sum + howCommon[kind], 0) /
  minutes /
  risk

/**
 * Checks by eye or hand for these kinds, each the one most worth making while those before it found nothing. None that
 * takes more than one cover off is among them.
 */
export const checksFor = (kinds: readonly FaultKindName[]): PartCheck[] => {
  const [best] = partChecks
    .filter(({ opened }) => opened === 'nothing' || opened === 'one-cover')
    .sort((one, other) => worth(other, kinds) - worth(one, kinds))
  if (!best || worth(best, kinds) === 0) return []
  return [best, ...checksFor(kinds.filter((kind) => !best.shows.includes(kind)))]
}

/** The rows of the fault chart, in the order of the symptoms; `pattern` is the patterned card that is looked at. */
export const faultChart = (pattern: Card): ChartRow[] => {
  const kinds = (Object.keys(faultKinds) as FaultKindName[])
    .map((kind) => ({ kind, symptom: symptomOf(kind, pattern), came: cameOf(kind, pattern) }))
    .sort((one, other) => howCommon[other.kind] - howCommon[one.kind])
  return symptoms.flatMap((symptom) =>
    groupBy(
      kinds.filter((one) => one.symptom === symptom),
      ({ came }) => (directed.includes(symptom) ? came : ''),
    ).map((group): ChartRow => {
      const names = group.map(({ kind }) => kind)
      const look = lookOf(names, pattern)
      return {
        symptom,
        came: directed.includes(symptom) ? group[0]!.came : null,
        kinds: names,
        look,
        pass: lookAt([exampleOf(names[0]!)], look, pattern),
        checks: checksFor(names),
      }
    }),
  )
}
