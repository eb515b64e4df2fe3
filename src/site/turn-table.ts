import { wayOfPass } from '../mechanism/bed.ts'
import { conditionOf } from '../mechanism/condition.ts'
import { faultOf } from '../mechanism/read-fault.ts'
import { soundScenario } from '../mechanism/scenario.ts'
import { rowRead } from '../mechanism/turn.ts'
import { patternCard } from './cards.ts'

/** What a teacher's table of turns compares: a heading, and the fault's id; null for a sound machine. */
const turnFaults = [
  { name: 'Sound', id: null },
  { name: 'Turned short before pass 5', id: 'turn.short.5' },
  { name: 'Right pawl dead', id: 'pawl.right' },
  { name: 'Left pawl dead', id: 'pawl.left' },
] as const

/** The headings of the table's columns. */
export const turnNames: readonly string[] = turnFaults.map(({ name }) => name)

/** A pass, which way it goes, and the card row that each machine reads in it. */
export interface TurnLine {
  readonly pass: number
  readonly way: 'right' | 'left'
  readonly rows: readonly (number | null)[]
}

/** Which card row is read in each of the first `passes` passes, from 1, on each of the machines compared. */
export const turnTable = (passes: number): TurnLine[] => {
  const conditions = turnFaults.map(({ id }) =>
    conditionOf({ ...soundScenario(patternCard), faults: id === null ? [] : [faultOf(id)] }),
  )
  return Array.from({ length: passes }, (_, n) => ({
    pass: n + 1,
    way: wayOfPass(n + 1) === 1 ? 'right' : 'left',
    rows: conditions.map((condition) => rowRead(condition, n + 1)),
  }))
}
