import { scenarioIn } from '../../find/view.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import type { CardLibrary } from '../../link/state.ts'
import { defaultState } from '../../link/read.ts'
import { wholeBedOf, withinPass } from '../../mechanism/bed.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { dimensionsOf } from '../../mechanism/own.ts'
import { fragmentOf } from '../../browser/address.ts'
import { viewsOfQuery } from '../../find/query.ts'
import { queryOf } from './session-query.ts'

const wrongIn = ({ marks }: SeenPass): number => marks.filter((mark) => mark === 'w' || mark === 'u').length

/** The pass of a session in which most came out wrong. */
export const mostWrong = ({ passes }: Session): SeenPass | undefined =>
  [...passes].sort((one, other) => wrongIn(other) - wrongIn(one))[0]

/** Where the carriage is to show a pass: some way through it, whichever way it goes. */
const midway = { right: 139, left: 60 } as const

/** A finding's machine as a link's text, and whether its card was laid in further on than the card as it is. */
export interface FindingState {
  readonly text: string
  readonly isMoved: boolean
}

/**
 * The machine with the finding's faults, at the pass that shows most. That pass follows the passes before it, as it did
 * when it was noted. Where its row was noted the other way round, the card was laid in one row further on: it is so
 * in the link, as a card of its own, and a fault of the card's own moves with its row.
 */
export const findingState = (
  session: Session,
  finding: readonly Fault[],
  library: CardLibrary,
): FindingState => {
  const { columnOne, own } = session
  const home = { ...defaultState(library), columnOne, own, bed: wholeBedOf(dimensionsOf(own).needles) }
  const seen = mostWrong(session)
  const view = seen && viewsOfQuery(queryOf(session, library))[session.passes.indexOf(seen)]
  if (!seen || !view) return { text: fragmentOf({ ...home, faults: finding }, library), isMoved: false }
  const isMoved = view.card !== null && (view.shift ?? 0) !== 0
  const { faults } = scenarioIn(view, finding)
  const state = {
    ...home,
    card: isMoved ? { kind: 'own' as const, rows: view.card } : seen.card,
    pass: view.pass,
    at: withinPass(view.pass % 2 === 0 ? midway.left : midway.right, view.pass, home.bed),
    speed: seen.speed,
    faults,
  }
  return { text: fragmentOf(state, library), isMoved }
}
