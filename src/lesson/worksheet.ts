import type { CardLibrary } from '../link/state.ts'
import { type Draw, drawFrom } from './draw.ts'
import { twoFaults } from './makers/faults-two.ts'
import { floatAsked } from './makers/number-float.ts'
import { columnAsked, stripAsked } from './makers/number-names.ts'
import { rowAsked, shortRowAsked } from './makers/number-rows.ts'
import { anyPart, atSpeed } from './makers/part-any.ts'
import { stuckPin } from './makers/pins.ts'
import { lateRow } from './makers/row-late.ts'
import { soundRow } from './makers/row-sound.ts'
import { steppingPart } from './makers/rows-read.ts'
import { badStrip } from './makers/strip-bad.ts'
import type { Body, Maker } from './question.ts'
import { holeOnPaper } from './worksheet/hole.ts'

/** How hard a task is, each with a page of its own. */
export const levels = ['easy', 'middling', 'hard'] as const
export type Level = (typeof levels)[number]

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

const whole = (draw: Draw): number => draw.whole(0, 0xffffffff)

/**
 * The tasks of the worksheet of this name, which `readName` gave: the same name makes the same sheet for ever. Its
 * questions are the chapters' own, and the model answers them.
 */
export const worksheet = (name: string, library: CardLibrary): Task[] =>
  kinds.map(({ id, level, makers }) => {
    const draw = drawFrom(`worksheet ${id} ${name}`, 1)
    const maker: Maker = draw.pick<Maker>(makers)
    return { kind: id, level, question: maker({ draw: drawFrom(id, whole(draw)), library }) }
  })
