import type { Place } from '@/find/place.ts'
import { isKindByChance } from '@/find/kinds-by-chance.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { proofPasses, type ProofPasses } from '@/find/prove.ts'
import { type CardAndPasses, viewsOfQuery } from '@/find/query.ts'
import { statementOf } from '@/find/statement.ts'
import { singleFaults } from '@/find/showing.ts'
import { scenarioIn } from '@/find/view.ts'
import { type CardPlace, usualPlace } from '@/mechanism/bed.ts'
import { type Card, everyHole } from '@/mechanism/card.ts'
import { type Fault, faultId } from '@/mechanism/fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import type { Unnoted } from './noted.ts'

const cardOf = { none: null, 'all-holes': [everyHole], blank: [0] } as const

const found = new Map<string, ProofPasses>()

/** What proves a machine with this card, computed once for all tests of a file. */
export const proofOf = (
  card: Card | null,
  worked: readonly Place[] = [],
  place: CardPlace = usualPlace,
): ProofPasses => {
  const key = JSON.stringify([card, worked, place])
  let proof = found.get(key)
  if (!proof) found.set(key, (proof = proofPasses({ card, worked, ...place })))
  return proof
}

/** The passes that prove a machine with this card. */
export const passesFor = (
  card: Card | null,
  worked: readonly Place[] = [],
  place: CardPlace = usualPlace,
): Unnoted[] =>
  proofOf(card, worked, place).passes.map(({ card: asked, ...pass }) => ({
    ...pass,
    ...(asked === 'same' ? {} : { card: cardOf[asked] }),
  }))

/** Whether the needles looked at come out otherwise than noted on a sound machine, by running the whole model. */
export const shows = (query: CardAndPasses, fault: Fault): boolean =>
  viewsOfQuery(query).some((view, n) => {
    const bed = lettersOf(startRun(scenarioIn(view, [fault])).passOf(view.pass))
    const { needles } = query.passes[n]!
    return [...bed].some((letter, needle) => needles[needle] !== '?' && needles[needle] !== letter)
  })

export const unshownOf = (query: CardAndPasses): string[] =>
  statementOf(query)
    .unshown.map(({ fault }) => faultId(fault))
    .sort()

/** Every single fault that goes by no chance and that the model does not show, each run through all the passes. */
export const hiddenByForce = (query: CardAndPasses): string[] =>
  singleFaults(viewsOfQuery(query))
    .filter((fault) => !isKindByChance(fault.kind) && !shows(query, fault))
    .map(faultId)
    .sort()
