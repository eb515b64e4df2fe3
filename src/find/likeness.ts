import type { Card } from '../mechanism/card.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import type { Pass } from '../mechanism/pass.ts'
import { exampleOf, type Look, lookAt, standardLooks, speeds } from './battery.ts'
import { isKindByChance } from './kinds-by-chance.ts'
import { lettersOf } from './bed-letters.ts'

/** Another kind of fault that shows the same in the first look that shows this one. */
export interface Likeness {
  readonly kind: FaultKindName
  /** The first look that distinguishes the two; null where no look does. */
  readonly apart: Look | null
}

const names = Object.keys(faultKinds) as FaultKindName[]

/** The passes of a kind's example in every look, in the looks' order. */
export const passesOf = (kind: FaultKindName, pattern: Card): Pass[] =>
  standardLooks.map((look) => lookAt([exampleOf(kind)], look, pattern))

/** The first look that shows a kind of fault at all; null where none does at its usual amount. */
export const firstShown = (kind: FaultKindName, pattern: Card): Look | null =>
  standardLooks.find((look) => lookAt([exampleOf(kind)], look, pattern).departures.length > 0) ?? null

/**
 * The kinds that give the very same bed in the look that first shows this one, with what parts them. Of kinds that go by
 * chance one machine says nothing: `chance-likeness.ts` has them.
 */
export const likenesses = (kind: FaultKindName, pattern: Card): Likeness[] => {
  const first = firstShown(kind, pattern)
  if (!first || isKindByChance(kind)) return []
  const own = passesOf(kind, pattern).map(lettersOf)
  const place = standardLooks.indexOf(first)
  return names.flatMap((other) => {
    if (other === kind || isKindByChance(other)) return []
    const beds = passesOf(other, pattern).map(lettersOf)
    if (beds[place] !== own[place]) return []
    return [{ kind: other, apart: standardLooks.find((_, n) => beds[n] !== own[n]) ?? null }]
  })
}

/** What one sees first of a fault, by which a repairer looks it up. */
export const symptoms = [
  'nothing',
  'everything',
  'eighth',
  'twentyFourth',
  'one',
  'oneWay',
  'fast',
  'oneRow',
  'rows',
] as const
export type Symptom = (typeof symptoms)[number]

/** Kinds that fail in some rows and not in others by chance: they are known by their needles, whatever one pass shows. */
const byChance: Partial<Record<FaultKindName, Symptom>> = { 'pin.sticky': 'twentyFourth' }

const sharesStep = (indexes: readonly number[], step: number): boolean =>
  indexes.every((index) => (index - indexes[0]!) % step === 0)

/** How a kind of fault is seen: by its speed, its row or its way where that strikes first, else by its needles. */
export const symptomOf = (kind: FaultKindName, pattern: Card): Symptom => {
  const known = byChance[kind]
  if (known) return known
  const wrong = (card: Look['card'], pass: number, speed: number = speeds.ordinary): number[] =>
    lookAt([exampleOf(kind)], { card, pass, speed }, pattern).departures.map(({ needle }) => needle)
  const isSlowSound =
    wrong('pattern', 1, speeds.slow).length === 0 && wrong('blank', 1, speeds.slow).length === 0
  if (isSlowSound && wrong('pattern', 1).length + wrong('blank', 1, speeds.fast).length > 0) return 'fast'
  const plain = (['holes', 'blank'] as const).map((card) => ({
    right: wrong(card, 1),
    left: wrong(card, 2),
    rightAgain: wrong(card, 3),
  }))
  const needles = [...new Set(plain.flatMap(({ right, left }) => [...right, ...left]))]
  if (needles.length === 0)
    return sharesStep(wrong('pattern', 1), 8) && wrong('pattern', 1).length > 2 ? 'eighth' : 'rows'
  if (plain.some(({ right, rightAgain }) => right.length > 0 && rightAgain.length === 0)) return 'oneRow'
  const ways = [plain.some(({ right }) => right.length > 0), plain.some(({ left }) => left.length > 0)]
  if (!ways.every(Boolean)) return 'oneWay'
  if (needles.length === 1) return 'one'
  if (sharesStep(needles, 24)) return 'twentyFourth'
  if (sharesStep(needles, 8)) return 'eighth'
  // With a blank card all is sound where needles are only missed.
  return wrong('blank', 1).length > 0 ? 'everything' : 'nothing'
}
