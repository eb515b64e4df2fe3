import { markAs } from '../../link/bed-marks.ts'
import { type Job, newJob } from '../../link/job.ts'
import { emptySession, writeSession } from '../../link/session-link.ts'
import { firstPass, type SeenPass } from '../../link/session.ts'
import { type CardLibrary, rowsOf } from '../../link/state.ts'
import { wayOfPass } from '../../mechanism/bed.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { toStrip } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'

/** The number of the example: each look at it is at the same one. */
export const exampleId = 8

/** What is wrong with the example's machine: the oil on two strips has set. */
const faults: readonly Fault[] = [3, 6].map((strip) => ({
  kind: 'strip.seized',
  at: [toStrip(strip)],
  amount: null,
}))

const passes = 4

/** The example's first passes as its machine makes them, noted without a slip. */
const seenPasses = (library: CardLibrary): SeenPass[] => {
  const first = firstPass(library)
  const card = rowsOf(first.card, library)
  const machine = startRun({ ...soundScenario(card), faults })
  const sound = startRun(soundScenario(card))
  return Array.from({ length: passes }, (_, n): SeenPass => {
    const pass = n + 1
    const asked = sound.passOf(pass).came
    return {
      ...first,
      row: sound.passOf(pass).row,
      way: wayOfPass(pass),
      pass,
      marks: Array.from(machine.passOf(pass).came, (came, needle) => markAs(came, at(asked, needle))),
    }
  })
}

/** A made-up job to look at: a machine from a net loft, whose oil has set. `now` is in ms since 1970. */
export const exampleJob = (now: number, library: CardLibrary): Job => ({
  ...newJob(exampleId, now, 'Example: grey machine from the net loft'),
  complaint:
    'It was her aunt’s, and has been in the loft since the ferry stopped. It knits plain. In pattern there are upright lines of missed stitches.',
  state: 'open',
  intake: { plain: 'well', onset: 'slow', stood: 'years', opened: 'no', settings: 'checked' },
  before: writeSession({ ...emptySession(library), passes: seenPasses(library) }, library),
  word: 'Please run the carriage across a few times each month, with a card in.',
})
