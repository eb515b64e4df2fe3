import { type CardPlace, canonicalPlace, usualPlace } from '../mechanism/bed.ts'
import type { CardLibrary } from '../link/state.ts'
import { type Random, seededRandom } from './seeded-random.ts'
import { twoFaults } from './makers/needles-two-faults.ts'
import { floatAsked } from './makers/number-float.ts'
import { columnAsked, stripAsked } from './makers/number-names.ts'
import { rowAsked, shortRowAsked } from './makers/number-rows.ts'
import { anyPart, atSpeed } from './makers/part-makers.ts'
import { stuckPin } from './makers/needles-pins.ts'
import { lateRow } from './makers/needles-late-row.ts'
import { soundRow } from './makers/needles-sound-row.ts'
import { steppingPart } from './makers/part-stepping.ts'
import { badStrip } from './makers/needles-strip.ts'
import type { Body, Maker } from './question.ts'
import { holeOnPaper } from './worksheet/hole.ts'

/** How hard a task is, each with a page of its own. */
export const levels = ['easy', 'middling', 'hard'] as const
type Level = (typeof levels)[number]

/** The kinds of task in the order in which a worksheet sets them, each made by one of its makers. */
const kinds = [
  { id: 'needle', level: 'easy', makers: [columnAsked, stripAsked] },
  { id: 'loop', level: 'easy', makers: [rowAsked] },
  { id: 'hole', level: 'easy', makers: [holeOnPaper] },
  { id: 'row', level: 'easy', makers: [soundRow] },
  { id: 'short', level: 'middling', makers: [shortRowAsked] },
  { id: 'wrong', level: 'middling', makers: [badStrip, stuckPin] },
  { id: 'float', level: 'middling', makers: [floatAsked] },
  { id: 'late', level: 'middling', makers: [lateRow] },
  { id: 'stepping', level: 'hard', makers: [steppingPart] },
  { id: 'part', level: 'hard', makers: [anyPart, atSpeed] },
  { id: 'two', level: 'hard', makers: [twoFaults] },
] as const satisfies readonly { id: string; level: Level; makers: readonly Maker[] }[]

export type TaskKind = (typeof kinds)[number]['id']

/** The kinds of task, in their order. */
export const taskKinds: readonly TaskKind[] = kinds.map(({ id }) => id)

/** A task to work out by hand. */
export interface Task {
  readonly kind: TaskKind
  readonly level: Level
  readonly question: Body
}

const whole = (random: Random): number => random.whole(0, 0xffffffff)

/**
 * The tasks of the worksheet of this name, which `readName` gave: the same name makes the same sheet for ever. Its
 * questions are the chapters' own, and the model answers them for a bed with column 1 at `place`.
 */
export const worksheet = (name: string, library: CardLibrary, place: CardPlace = usualPlace): Task[] =>
  kinds.map(({ id, level, makers }) => {
    const random = seededRandom(`worksheet ${id} ${name}`, 1)
    const maker: Maker = random.pick<Maker>(makers)
    return {
      kind: id,
      level,
      question: maker({ random: seededRandom(id, whole(random)), library, ...canonicalPlace(place) }),
    }
  })
