import { codes } from '../../find/outcome.ts'
import { usualSlip } from '../../find/priors.ts'
import { soundBeds } from '../../find/sound.ts'
import type { NeedleMark, BedMarks } from '../../link/bed-marks.ts'
import type { SeenPass, Session } from '../../link/session.ts'
import { sameCard } from '../../link/card-choice.ts'
import { type CardLibrary, rowsOf } from '../../link/state.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import type { Ask, Prediction } from './messages.ts'
import { needlesWith, practiceFault } from './practice.ts'
import { sureSlip } from './slip.ts'

/** How a needle came out, or that nobody looked. */
export type Seen = Outcome | 'unseen'

const beds = soundBeds()
const outcomes = Object.keys(codes) as Outcome[]
const outcomeOf = (code: number): Outcome => outcomes.find((outcome) => codes[outcome] === code) ?? 'plain'

/** What a sound machine makes of a pass, needle by needle: what the card asks. */
export const askedIn = ({ card, row, way, speed }: SeenPass, library: CardLibrary): Outcome[] => {
  const rows = rowsOf(card, library)
  const bits = rows && row !== null ? (rows[(row - 1) % rows.length] ?? 0) : null
  return Array.from(beds(bits, way, speed).codes, outcomeOf)
}

/** How a needle came out that was asked to do this and was marked so. */
export const seenAs = (mark: NeedleMark, asked: Outcome): Seen => {
  if (mark === 'n') return 'unseen'
  if (mark === 'u') return 'unmoved'
  if (mark === 'r') return asked
  return asked === 'selected' ? 'plain' : 'selected'
}

/** The mark of a needle that was asked to do one thing and did another. */
export const markAs = (seen: Seen, asked: Outcome): NeedleMark => {
  if (seen === 'unseen') return 'n'
  if (seen === asked) return 'r'
  return seen === 'unmoved' ? 'u' : 'w'
}

/** A bed as seen in a pass. */
export const seenIn = (pass: SeenPass, library: CardLibrary): Seen[] => {
  const asked = askedIn(pass, library)
  return pass.marks.map((mark, index) => seenAs(mark, asked[index] ?? 'plain'))
}

/** A bed as it came out; needles that nobody looked at as they should have. */
export const cameIn = (pass: SeenPass, library: CardLibrary): Outcome[] => {
  const asked = askedIn(pass, library)
  return seenIn(pass, library).map((seen, n) => (seen === 'unseen' ? (asked[n] ?? 'plain') : seen))
}

/** The bed that a prediction makes of what a pass asks. */
export const predictedIn = (
  pass: SeenPass,
  { changed }: Pick<Prediction, 'changed'>,
  library: CardLibrary,
): Outcome[] => {
  const bed = askedIn(pass, library)
  for (const change of changed) bed[change >> 2] = outcomeOf(change & 3)
  return bed
}

/** The marks of a bed that came out as predicted. */
export const marksPredicted = (
  pass: SeenPass,
  prediction: Pick<Prediction, 'changed'>,
  library: CardLibrary,
): BedMarks => {
  const asked = askedIn(pass, library)
  return predictedIn(pass, prediction, library).map((seen, index) => markAs(seen, asked[index] ?? 'plain'))
}

/** The needles that were seen otherwise than predicted, by index. */
export const misfits = (pass: SeenPass, prediction: Prediction, library: CardLibrary): number[] => {
  const predicted = predictedIn(pass, prediction, library)
  return seenIn(pass, library).flatMap((seen, index) => {
    const isLate = prediction.chance > 0 && seen === 'selected' && predicted[index] === 'plain'
    return seen === 'unseen' || seen === predicted[index] || isLate ? [] : [index]
  })
}

const letterOf: Readonly<Record<Seen, string>> = { selected: 's', plain: 'p', unmoved: 'u', unseen: '?' }

/** What the worker is asked for a session. The card in question is that of the first pass. */
export const askOf = ({ isRough, passes, checked }: Session, library: CardLibrary): Omit<Ask, 'id'> => {
  const [first] = passes
  return {
    slip: isRough ? usualSlip : sureSlip,
    passes: passes.map((pass) => ({
      card: rowsOf(pass.card, library),
      isOwn: first !== undefined && sameCard(pass.card, first.card),
      row: pass.row,
      way: pass.way,
      speed: pass.speed,
      needles: seenIn(pass, library)
        .map((seen) => letterOf[seen])
        .join(''),
    })),
    checked,
  }
}

const seenOf: Readonly<Record<string, Seen>> = { s: 'selected', p: 'plain', u: 'unmoved' }

/** A session as it is: in practice its beds come out as the machine of its seed makes them. */
export const withMachine = (session: Session, library: CardLibrary): Session => {
  if (session.practice === null) return session
  const beds = needlesWith(askOf(session, library).passes, practiceFault(session.practice))
  const passes = session.passes.map((pass, n) => {
    const asked = askedIn(pass, library)
    const marks = asked.map((should, index) => markAs(seenOf[beds[n]?.charAt(index) ?? ''] ?? should, should))
    return { ...pass, marks }
  })
  return { ...session, passes }
}
