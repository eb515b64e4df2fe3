import { type Fault, isHoleFault } from '../mechanism/fault.ts'
import type { Outcome } from '../mechanism/gate.ts'
import { markOfNeedle, type Needle } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { letterOf, needlesAt } from './bed-needles.ts'
import { everyView } from './exhaustive-views.ts'
import { outcomeOfCode } from './packed-change.ts'
import { type CardAndPasses, viewsOfQuery } from './query.ts'
import { soundBeds, soundIn } from './sound.ts'
import { chanceShown, everyNeedle, isShown, isTurn, singleFaults, showingsOf } from './showing.ts'
import { type MachinePlace, placeOnly, type View } from './view.ts'

/** A single fault that passes would not have shown. */
interface Unshown {
  readonly fault: Fault
  /** Chance that they would have; 0 but for what goes by chance. */
  readonly chance: number
  /** Whether no look from outside shows it, or only these passes don't. */
  readonly why: 'from-outside' | 'in-these'
}

/** A needle that came out otherwise than on a sound machine. */
interface WrongNeedle {
  /** Which of the passes, from 0. */
  readonly pass: number
  readonly needle: Needle
  readonly due: Outcome
}

/** What passes prove of a machine. */
export interface Statement {
  /** How many single faults it could have, and how many of them would have shown. */
  readonly faults: number
  readonly shown: number
  readonly unshown: readonly Unshown[]
  /** Needles that did not come out right: where there are none, the faults that would have shown are not there. */
  readonly wrong: readonly WrongNeedle[]
}

const letterOfCode = (code: number): string => outcomeOfCode(code).charAt(0)

const isOfCard = (fault: Fault): boolean => isTurn(fault) || isHoleFault(fault)

/** Of some faults those that no look from outside shows, with any card: holes and turns show where they are looked at. */
const hiddenAnywhere = (faults: readonly Fault[], place: MachinePlace): Set<Fault> => {
  const views = everyView.map((view): View => ({ ...view, ...placeOnly(place) }))
  const own = faults.filter((fault) => !isOfCard(fault))
  const showings = showingsOf(own, { views, isLookedAt: everyNeedle })
  return new Set(showings.filter((showing) => !isShown(showing)).map(({ fault }) => fault))
}

/**
 * What the passes noted prove: which single faults would have shown on the needles that were looked at, on a machine that
 * is sound otherwise, and whether those came out right.
 */
export const statementOf = (query: CardAndPasses): Statement => {
  const views = viewsOfQuery(query)
  const letterAt = (pass: number, needle: Needle): string => letterOf(at(query.passes, pass).needles, needle)
  const isLookedAt = (pass: number, needle: Needle): boolean => /^[spu]$/.test(letterAt(pass, needle))
  const showings = showingsOf(singleFaults(views), { views, isLookedAt })
  const unshown = showings.filter((showing) => !isShown(showing))
  const hidden = hiddenAnywhere(
    unshown.map(({ fault }) => fault),
    query,
  )
  const beds = soundBeds()
  const wrong = views.flatMap((view, pass) => {
    const sound = soundIn(beds, view).codes
    const codeAt = (needle: Needle): number => markOfNeedle(sound, needle)
    return needlesAt(query)
      .filter((needle) => isLookedAt(pass, needle) && letterAt(pass, needle) !== letterOfCode(codeAt(needle)))
      .map((needle): WrongNeedle => ({ pass, needle, due: outcomeOfCode(codeAt(needle)) }))
  })
  return {
    faults: showings.length,
    shown: showings.length - unshown.length,
    unshown: unshown.map((showing) => ({
      fault: showing.fault,
      chance: chanceShown(showing),
      why: hidden.has(showing.fault) ? 'from-outside' : 'in-these',
    })),
    wrong,
  }
}
