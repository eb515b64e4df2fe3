import { changedCode, changedNeedle, outcomeOfCode } from '../../find/packed-change.ts'
import type { Prediction } from '../../find/check-outcomes.ts'
import { needlesWith, practiceFault } from '../../find/practice.ts'
import { slips } from '../../find/priors.ts'
import { isCheckId } from '../../find/checks.ts'
import type { Query } from '../../find/query.ts'
import { soundBeds } from '../../find/sound.ts'
import type { NeedleMark, BedMarks } from '../../link/bed-marks.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import { type CardLibrary, rowsOf } from '../../link/state.ts'
import type { Outcome } from '../../mechanism/gate.ts'

/** How a needle came out, or that nobody looked. */
export type NotedOutcome = Outcome | 'unseen'

const beds = soundBeds()

/** What a sound machine makes of a pass, needle by needle: what the card asks. */
export const expectedIn = ({ card, row, way, speed }: SeenPass, library: CardLibrary): Outcome[] => {
  const rows = rowsOf(card, library)
  const bits = rows && row !== null ? (rows[(row - 1) % rows.length] ?? 0) : null
  return Array.from(beds(bits, way, speed).codes, outcomeOfCode)
}

/** How a needle came out that was asked to do this and was marked so. */
export const notedAs = (mark: NeedleMark, asked: Outcome): NotedOutcome => {
  if (mark === 'n') return 'unseen'
  if (mark === 'u') return 'unmoved'
  if (mark === 'r') return asked
  return asked === 'selected' ? 'plain' : 'selected'
}

/** The mark of a needle that was asked to do one thing and did another. */
export const markAs = (seen: NotedOutcome, asked: Outcome): NeedleMark => {
  if (seen === 'unseen') return 'n'
  if (seen === asked) return 'r'
  return seen === 'unmoved' ? 'u' : 'w'
}

/** A bed as seen in a pass. */
export const notedIn = (pass: SeenPass, library: CardLibrary): NotedOutcome[] => {
  const asked = expectedIn(pass, library)
  return pass.marks.map((mark, index) => notedAs(mark, asked[index] ?? 'plain'))
}

/** A bed as it came out; needles that nobody looked at as they should have. */
export const actualIn = (pass: SeenPass, library: CardLibrary): Outcome[] => {
  const asked = expectedIn(pass, library)
  return notedIn(pass, library).map((seen, n) => (seen === 'unseen' ? (asked[n] ?? 'plain') : seen))
}

/** The bed that a prediction makes of what a pass asks. */
export const predictedIn = (
  pass: SeenPass,
  { changed }: Pick<Prediction, 'changed'>,
  library: CardLibrary,
): Outcome[] => {
  const bed = expectedIn(pass, library)
  for (const packed of changed) bed[changedNeedle(packed)] = outcomeOfCode(changedCode(packed))
  return bed
}

/** The marks of a bed that came out as predicted. */
export const marksPredicted = (
  pass: SeenPass,
  prediction: Pick<Prediction, 'changed'>,
  library: CardLibrary,
): BedMarks => {
  const asked = expectedIn(pass, library)
  return predictedIn(pass, prediction, library).map((seen, index) => markAs(seen, asked[index] ?? 'plain'))
}

/** The needles that were seen otherwise than predicted, by index. */
export const misfits = (pass: SeenPass, prediction: Prediction, library: CardLibrary): number[] => {
  const predicted = predictedIn(pass, prediction, library)
  return notedIn(pass, library).flatMap((seen, index) => {
    const isLate = prediction.chance > 0 && seen === 'selected' && predicted[index] === 'plain'
    return seen === 'unseen' || seen === predicted[index] || isLate ? [] : [index]
  })
}

const letterOf: Readonly<Record<NotedOutcome, string>> = { selected: 's', plain: 'p', unmoved: 'u', unseen: '?' }

/** What is known of a machine by a session. The card in question is that of the first pass. */
export const queryOf = ({ isRough, passes, checked }: Session, library: CardLibrary): Query => {
  const [first] = passes
  return {
    card: first ? rowsOf(first.card, library) : null,
    slip: isRough ? slips.rough : slips.sure,
    passes: passes.map((pass) => ({
      card: rowsOf(pass.card, library),
      row: pass.row,
      way: pass.way,
      speed: pass.speed,
      needles: notedIn(pass, library)
        .map((seen) => letterOf[seen])
        .join(''),
    })),
    checks: checked.flatMap(({ check, found }) => (isCheckId(check) ? [{ check, found }] : [])),
  }
}

const outcomeOfLetter: Readonly<Record<string, NotedOutcome>> = { s: 'selected', p: 'plain', u: 'unmoved' }

/** A session as it is: in practice its beds come out as the machine of its seed makes them. */
export const withMachine = (session: Session, library: CardLibrary): Session => {
  if (session.practice === null) return session
  const beds = needlesWith(queryOf(session, library), practiceFault(session.practice))
  const passes = session.passes.map((pass, n) => {
    const asked = expectedIn(pass, library)
    const marks = asked.map((should, index) => markAs(outcomeOfLetter[beds[n]?.charAt(index) ?? ''] ?? should, should))
    return { ...pass, marks }
  })
  return { ...session, passes }
}
