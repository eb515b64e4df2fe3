import type { Card } from '../mechanism/card.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { type Look, standardLooks } from './battery.ts'
import { firstShown, passesOf, symptomOf } from './likeness.ts'

/** How much must be changed to come from one look to another: the speed is the least, then the pass, then the card. */
const apartness = (one: Look, other: Look): number =>
  Number(one.speed !== other.speed) +
  2 * Number(one.pass !== other.pass) +
  4 * Number(one.card !== other.card)

/**
 * The look that shows nothing wrong and is nearest to the one that first shows a kind of fault: what differs between
 * the two is what brings the fault out. Null where every look shows it.
 */
export const contrastOf = (kind: FaultKindName, pattern: Card): Look | null => {
  const first = firstShown(kind, pattern)
  if (!first) return null
  const passes = passesOf(kind, pattern)
  const clean = standardLooks.filter((_, n) => passes[n]!.departures.length === 0)
  return clean.reduce<Look | null>(
    (best, look) => (best === null || apartness(first, look) < apartness(first, best) ? look : best),
    null,
  )
}

/**
 * The first look with a card of all holes or none that shows a kind of fault, where it is known by which needles are
 * wrong: with such a card nothing else is mixed in. Null for other kinds, and where no such look shows it.
 */
export const plainestOf = (kind: FaultKindName, pattern: Card): Look | null => {
  if (!['eighth', 'twentyFourth', 'one'].includes(symptomOf(kind, pattern))) return null
  const passes = passesOf(kind, pattern)
  return standardLooks.find(({ card }, n) => card !== 'pattern' && passes[n]!.departures.length > 0) ?? null
}

/** The looks that show most of a kind of fault: the first that shows it, and the plainest one or else a contrast. */
export const tellingLooks = (kind: FaultKindName, pattern: Card): Look[] => {
  const first = firstShown(kind, pattern)
  const plainest = plainestOf(kind, pattern)
  const second = plainest === first ? contrastOf(kind, pattern) : (plainest ?? contrastOf(kind, pattern))
  return [first, second].filter((look) => look !== null)
}
