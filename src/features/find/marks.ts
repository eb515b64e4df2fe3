import type { Prediction } from '../../find/check-outcomes.ts'
import { changedCode, changedSlot, outcomeOfCode } from '../../find/packed-change.ts'
import { soundBeds } from '../../find/sound.ts'
import type { MachinePlace } from '../../find/view.ts'
import { type BedMarks, markAs, notedAs, type NotedOutcome } from '../../link/bed-marks.ts'
import type { SeenPass } from '../../link/session.ts'
import { type CardLibrary, rowsOf } from '../../link/state.ts'
import type { Outcome } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'

const beds = soundBeds()

/** What a sound machine with the card at a place makes of a pass, needle by needle. Throws a `RangeError` where the row is not on the card. */
export const expectedIn = (
  { card, row, way, speed }: SeenPass,
  library: CardLibrary,
  place: MachinePlace,
): Outcome[] => {
  const rows = rowsOf(card, library)
  const bits = rows && row !== null ? at(rows, (row - 1) % rows.length) : null
  return Array.from(beds(bits, way, speed, place).codes, outcomeOfCode)
}

/** A bed as it was noted in a pass. */
export const notedIn = (pass: SeenPass, library: CardLibrary, place: MachinePlace): NotedOutcome[] => {
  const expected = expectedIn(pass, library, place)
  return pass.marks.map((mark, index) => notedAs(mark, at(expected, index)))
}

/** A bed as it came out; needles that nobody looked at as they should have. */
export const actualIn = (pass: SeenPass, library: CardLibrary, place: MachinePlace): Outcome[] => {
  const expected = expectedIn(pass, library, place)
  return notedIn(pass, library, place).map((noted, n) => (noted === 'unseen' ? at(expected, n) : noted))
}

/** The bed that a prediction makes of what is expected of a pass. */
export const predictedIn = (
  pass: SeenPass,
  { changed }: Pick<Prediction, 'changed'>,
  library: CardLibrary,
  place: MachinePlace,
): Outcome[] => {
  const bed = expectedIn(pass, library, place)
  for (const packed of changed) bed[changedSlot(packed)] = outcomeOfCode(changedCode(packed))
  return bed
}

/** The marks of a bed that came out as predicted. */
export const marksPredicted = (
  pass: SeenPass,
  prediction: Pick<Prediction, 'changed'>,
  library: CardLibrary,
  place: MachinePlace,
): BedMarks => {
  const expected = expectedIn(pass, library, place)
  return predictedIn(pass, prediction, library, place).map((outcome, index) =>
    markAs(outcome, at(expected, index)),
  )
}
