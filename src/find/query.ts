import type { Card } from '../mechanism/card.ts'
import { type Fault, bareFaultId } from '../mechanism/fault.ts'
import type { CheckId } from './checks.ts'
import type { Experience } from './experience.ts'
import type { IntakeAnswer } from './intake.ts'
import type { Letters } from './bed-letters.ts'
import { type MachinePlace, type Noted, type View, viewsOf } from './view.ts'

/** A pass as somebody noted it, with the card that was in the reader. */
export interface NotedPass extends Noted {
  /** Null without a card. */
  readonly card: Card | null
  /** A letter a needle of the whole bed, from the left: s selected, p plain, u unmoved, ? not looked at. */
  readonly needles: Letters
}

/** A check that somebody made, and the fault found; null where all was sound there. */
export interface CheckMade {
  readonly check: CheckId
  readonly found: Fault | null
}

/** Everything that somebody knows of a machine, as `infer` takes it. */
export interface Query extends MachinePlace {
  /** The card in question, whose own holes may be at fault; null where none is. Other cards are taken to be sound. */
  readonly card: Card | null
  readonly passes: readonly NotedPass[]
  /** Chance that a needle is noted wrongly, 0 to 1, both excluded. */
  readonly slip: number
  readonly checks: readonly CheckMade[]
  /** What whoever brought the machine answered; left out where nobody was asked. */
  readonly intake?: readonly IntakeAnswer[]
  /** What the repairer has seen on other machines; left out where it is not to count. */
  readonly experience?: Experience
}

/** What passes are read with: the card in question, where its columns lie along the bed, and the passes. */
export type CardAndPasses = Pick<Query, 'card' | 'passes' | 'columnOne' | 'own'>

/** Whether two cards have the same rows; no card is the same as no card. */
export const isSameCard = (one: Card | null, other: Card | null): boolean =>
  one === other || (one !== null && other !== null && one.join() === other.join())

/** The passes of a query that were made with its card in question. */
export const passesInQuestion = ({ card, passes }: Pick<Query, 'card' | 'passes'>): NotedPass[] =>
  passes.filter((pass) => isSameCard(pass.card, card))

/** Passes in runs of one card each, in their order. */
const runsOf = (passes: readonly NotedPass[]): (readonly [NotedPass, ...NotedPass[]])[] => {
  const runs: [NotedPass, ...NotedPass[]][] = []
  for (const pass of passes) {
    const run = runs.at(-1)
    if (run && isSameCard(run[0].card, pass.card)) run.push(pass)
    else runs.push([pass])
  }
  return runs
}

/** The views of a query's passes: those in a row with one card follow one another, as on the machine. */
export const viewsOfQuery = ({ card, passes, ...place }: CardAndPasses): View[] =>
  runsOf(passes).flatMap((run) => {
    const own = run[0].card
    const views = viewsOf(own, run, place)
    return isSameCard(own, card) ? views : views.map((view) => ({ ...view, shift: null }))
  })

/** A fault's kind and place as a key: a look from outside, or at a part, doesn't show the amount. */
export const kindAndPlace = (fault: Fault): string => bareFaultId(fault)
