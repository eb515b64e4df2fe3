import type { Level } from '../find/deal-machine.ts'
import type { IntakeAnswer } from '../find/intake.ts'
import type { MachinePlace } from '../find/view.ts'
import type { Way } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Fault } from '../mechanism/fault.ts'
import { dimensionsOf, nothingOwn, type Own } from '../mechanism/own.ts'
import { allRightOf, type BedMarks } from './bed-marks.ts'
import type { CardChoice, CardLibrary } from './state.ts'

/** One pass as somebody saw it. */
export interface SeenPass {
  readonly card: CardChoice
  /** Row of the card, from 1; null without a card. */
  readonly row: number | null
  readonly way: Way
  /** In mm/s. */
  readonly speed: number
  /** Which pass it was, from 1: odd ones go to the right. Null where it is not known: it follows from the row and the way. */
  readonly pass: number | null
  readonly marks: BedMarks
}

/** A part that somebody looked at: the check's id, and the fault that was found; null for none. */
export interface Checked {
  readonly check: string
  readonly found: Fault | null
}

/** All that somebody entered to find a fault. */
export interface Session extends MachinePlace {
  /** What was measured of the machine; nothing for the training machine. */
  readonly own: Own
  /** The seed of the machine that is practised on; null where the machine is a real one. */
  readonly practice: number | null
  /** The same for machines dealt from every kind of fault that there is now; it counts where both are given. */
  readonly deal: number | null
  /** How hard the machine dealt is. */
  readonly level: Level
  /** Whether the needles were marked in passing, so that now and then one is wrong. */
  readonly isRough: boolean
  /** At least one. */
  readonly passes: readonly SeenPass[]
  readonly checked: readonly Checked[]
  /** What whoever brought the machine answered, one answer a question at most. */
  readonly intake: readonly IntakeAnswer[]
  /** The answer kept as the finding: faults that are there together; null for none yet. */
  readonly finding: readonly Fault[] | null
}

/** Whether a machine is practised on, rather than a real one. */
export const isPractised = ({ practice, deal }: Pick<Session, 'practice' | 'deal'>): boolean =>
  practice !== null || deal !== null

/** The most passes, checks and faults of a finding that a link may hold: a hostile one must not stop a page. */
export const sessionLimits = { passes: 40, checks: 20, together: 2 } as const

/** The pass that a session begins with, of a machine of which so much was measured. */
export const firstPass = (library: CardLibrary, own: Own = nothingOwn): SeenPass => ({
  card: { kind: 'site', id: library.main },
  row: 1,
  way: 1,
  speed: dimensions.speed,
  pass: null,
  marks: allRightOf(dimensionsOf(own).needles),
})
