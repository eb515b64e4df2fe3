import { isCheckId } from '../../find/checks.ts'
import { outcomesWith, practisedMachine } from '../../find/practice.ts'
import { slips } from '../../find/chances.ts'
import { type Query, viewsOfQuery } from '../../find/query.ts'
import type { Session } from '../../link/session.ts'
import { type CardLibrary, rowsOf } from '../../link/state.ts'
import { outcomeLetters } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'
import { nothingOwn } from '../../mechanism/own.ts'
import { expectedIn, notedIn } from './marks.ts'
import { markAs, type NotedOutcome } from '../../link/bed-marks.ts'

const letterOf: Readonly<Record<NotedOutcome, string>> = { ...outcomeLetters, unseen: '?' }

/** What is known of a machine by a session. The card in question is that of the first pass. */
export const queryOf = (
  { isRough, passes, checked, intake, columnOne, own }: Session,
  library: CardLibrary,
): Query => {
  const [first] = passes
  const machine = own === nothingOwn ? { columnOne } : { columnOne, own }
  return {
    card: first ? rowsOf(first.card, library) : null,
    slip: isRough ? slips.rough : slips.sure,
    passes: passes.map((pass) => ({
      card: rowsOf(pass.card, library),
      row: pass.row,
      way: pass.way,
      speed: pass.speed,
      ...(pass.pass === null ? {} : { pass: pass.pass }),
      needles: notedIn(pass, library, machine)
        .map((noted) => letterOf[noted])
        .join(''),
    })),
    checks: checked.flatMap(({ check, found }) => (isCheckId(check) ? [{ check, found }] : [])),
    intake,
    ...machine,
  }
}

/**
 * A session whose passes all say which pass each was. One that does not say is the one that its row and way make it, so that
 * what was noted means the same as before.
 */
export const withNumbers = (session: Session, library: CardLibrary): Session => {
  if (session.passes.every(({ pass }) => pass !== null)) return session
  const views = viewsOfQuery(queryOf(session, library))
  return { ...session, passes: session.passes.map((pass, n) => ({ ...pass, pass: at(views, n).pass })) }
}

/** A session as it is: in practice its beds come out as the machine of its seed makes them. */
export const withMachine = (session: Session, library: CardLibrary): Session => {
  const machine = practisedMachine(session)
  if (machine === null) return session
  const beds = outcomesWith(queryOf(session, library), machine)
  const passes = session.passes.map((pass, n) => {
    const outcomes = at(beds, n)
    return {
      ...pass,
      marks: expectedIn(pass, library, session).map((expected, index) =>
        markAs(at(outcomes, index), expected),
      ),
    }
  })
  return { ...session, passes }
}
