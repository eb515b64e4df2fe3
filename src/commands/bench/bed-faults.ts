import { everyHole, hasHole, type Card } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultOf } from '../../mechanism/read-fault.ts'
import { allColumns, ofRow, rowsOf } from '../../mechanism/indices.ts'
import { amount } from './part-faults.ts'
import type { Draws } from './draws.ts'

/** Passes before whose turns something may go wrong once. */
const turns = { first: 2, last: 8 } as const

/** How a belt may be out: the pattern moved by eights, one way only, or nothing at all. */
const beltFault = ({ between, pick }: Draws): string => {
  const sign = pick([-1, 1])
  return pick([
    `belt.timing=${amount(sign * (8 + between(-0.5, 0.5)))}`,
    `belt.timing=${amount(sign * between(0.8, 0.92))}`,
    `belt.timing=${amount(sign * between(1.5, 5))}`,
    `belt.slack=${amount(between(1.6, 6))}`,
  ])
}

const wornOrMisplaced = (draws: Draws): string => {
  const { between, pick } = draws
  return pick([
    `sweep.worn=${amount(between(0.8, 1.5))}`,
    `presser.${pick(['right', 'left'])}.worn=${amount(between(0.7, 1.2))}`,
    `gate.1.low=${amount(between(0.5, 1.2))}`,
    `gate.1.high=${amount(between(0.5, 0.7))}`,
    `card.side=${amount(between(1.1, 2) * pick([-1, 1]))}`,
    `card.skew=${amount(between(0.1, 0.5) * pick([-1, 1]))}`,
  ])
}

const turnFault = ({ pick, whole }: Draws): string => {
  const pass = whole(turns.first, turns.last)
  return pick([
    'pawl.right',
    'pawl.left',
    'pawl.double',
    `pawl.skips.${pass}`,
    `pawl.jumps.${pass}`,
    `turn.short.${pass}`,
  ])
}

/** One fault that reaches the whole bed: of the belt, of the turn, or of a part that is worn or out of its place. */
export const bedFault = (draws: Draws): Fault =>
  faultOf(draws.pick([beltFault, turnFault, wornOrMisplaced])(draws))

/** A setting that somebody forgot; null for a card that is not in the reader. */
export const settingFault = ({ pick }: Draws): Fault | null => {
  const id = pick(['carriage.plain', 'belt.off', 'turn.twice', 'card.locked', 'card.reversed', null])
  return id === null ? null : faultOf(id)
}

/** A hole of the card torn open where there is none, or blocked. */
export const holeFault = ({ pick }: Draws, card: Card): Fault => {
  const row = pick(rowsOf(card.length))
  const column = pick(allColumns)
  return faultOf(`card.${hasHole(ofRow(card, row), column) ? 'blocked' : 'torn'}.${row}.${column}`)
}

/** A card of eight rows in some order: one full, one blank, and six of which each hole is as likely as not. */
export const testedCard = ({ several, whole }: Draws): Card => {
  const halves = Array.from({ length: 6 }, () => whole(0, everyHole))
  return several([everyHole, 0, ...halves], 8)
}
