import type { Card } from '../mechanism/card.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import { at } from '../mechanism/lookup.ts'
import { slowChances } from './chances.ts'
import type { RequestedPass } from './check-outcomes.ts'
import type { Demand } from './demand.ts'
import { fewestLooks } from './fewest-looks.ts'
import { type Place, placeOfFault } from './place.ts'
import { inOrder, isFast, type ProofLook, proofLooks, twinsOf } from './proof-looks.ts'
import {
  everyNeedle,
  isShown,
  isTurn,
  singleFaults,
  sureEnough,
  type Showing,
  showingsOf,
} from './showing.ts'
import { type MachinePlace, placeOnly } from './view.ts'

/** What is to be proved: with which card, where its columns lie, and the places that were worked on. */
export interface ProofQuestion extends MachinePlace {
  readonly card: Card | null
  readonly worked: readonly Place[]
}

/** Passes that would show it if anything were still wrong, in the order in which to make them. */
export interface ProofPasses {
  /**
   * Rows of the card belong to one run from its first row on, as their numbers say: passes between them are made at the
   * ordinary speed and need not be looked at. Where one is named at both speeds, a second run has the fast ones.
   */
  readonly passes: readonly RequestedPass[]
  /** No fewer passes of those that may be asked for would do. */
  readonly atLeast: number
  /** Faults that none of those passes would show, or not surely enough. */
  readonly hidden: readonly Fault[]
}

/** What was worked on is tried at more amounts: a strip may be slow by any that the search for faults weighs. */
const workedFaults = (worked: readonly Place[]): Fault[] =>
  singleFaults([])
    .filter((fault) => fault.kind === 'strip.slow' && worked.includes(placeOfFault(fault)))
    .flatMap((fault) => slowChances.map(({ ms }) => makeFault(fault.kind, fault.at, ms)))

/** How much of what makes a fault surely shown each look gives: what goes by chance adds up as logarithms do. */
const demandOf = ({ chances }: Showing): Demand =>
  Float64Array.from(chances, (chance) => Math.min(1, Math.log1p(-chance) / Math.log1p(-sureEnough)))

/** How many of the single turns of these looks' run none of them would show. */
const turnsHidden = (looks: readonly ProofLook[]): number => {
  const views = looks.map(({ view }) => view)
  const turns = singleFaults(views).filter(isTurn)
  return showingsOf(turns, { views, isLookedAt: everyNeedle }).filter((showing) => !isShown(showing)).length
}

/** More looks, one by one, as long as one shows more of the single turns that the looks of the run leave hidden. */
const withTurns = (taken: readonly ProofLook[], others: readonly ProofLook[]): ProofLook[] => {
  const hidden = turnsHidden(taken)
  if (hidden === 0) return [...taken]
  const [best] = others
    .filter((look) => look.view.shift !== null && !isFast(look) && !taken.includes(look))
    .map((look) => ({ look, left: turnsHidden([...taken, look]) }))
    .sort((one, other) => one.left - other.left)
  return best && best.left < hidden ? withTurns([...taken, best.look], others) : [...taken]
}

/**
 * The fewest passes that would show it if a place that was worked on, or any single fault at all, were still there, on a
 * machine that is sound otherwise.
 */
export const proofPasses = ({ card, worked, ...place }: ProofQuestion): ProofPasses => {
  const looks = proofLooks(card, placeOnly(place))
  const views = looks.map(({ view }) => view)
  const showings = showingsOf([...singleFaults([], place), ...workedFaults(worked)], {
    views,
    isLookedAt: everyNeedle,
  })
  // No pass is fast before another has run freely.
  const slowFirst = Float64Array.from(looks, (look) => (isFast(look) ? 0 : 1))
  const demands = [slowFirst, ...showings.filter(isShown).map(demandOf)]
  const { taken, atLeast } = fewestLooks(demands, twinsOf(looks)) ?? fewestLooks(demands, [...looks.keys()])!
  const all = withTurns(
    taken.map((look) => at(looks, look)),
    looks,
  )
  return {
    passes: inOrder(all).map(({ pass }) => pass),
    atLeast,
    hidden: showings.filter((showing) => !isShown(showing)).map(({ fault }) => fault),
  }
}
