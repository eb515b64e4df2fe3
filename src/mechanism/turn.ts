import { type Bed, modulo, passEnds, sideOfTurn, wayOfPass } from './bed.ts'
import type { Condition, TurnFaults } from './condition.ts'
import { dimensions } from './dimensions.ts'
import { type CardRow, toCardRow } from './indices.ts'
import type { PartId } from './part.ts'

/** Whether the turn before pass `pass` (2 or more) is at the right, where the lever for reading rows twice acts. */
const isAtRight = (pass: number): boolean => sideOfTurn(pass) === 'right'

/** What may keep the card from going on by one row at a turn, by the part at fault. */
type TurnTrouble = 'belt' | 'card' | 'lever' | 'turn' | 'pawl'

/** The part that keeps the card where it is at the turn before pass `pass` (2 or more); null where it goes on. */
export const standstill = (
  condition: Condition,
  pass: number,
  turns: TurnFaults = condition.turns,
): TurnTrouble | null => {
  if (condition.beltOff) return 'belt'
  if (condition.cardLocked) return 'card'
  if (condition.turnTwice && isAtRight(pass)) return 'lever'
  if (turns.short.has(pass)) return 'turn'
  return turns.skipped.has(pass) || condition.pawlDead[sideOfTurn(pass)] ? 'pawl' : null
}

/** Rows by which the card steps at the turn before pass `pass` (2 or more). */
export const stepsAtTurn = (
  condition: Condition,
  pass: number,
  turns: TurnFaults = condition.turns,
): 0 | 1 | 2 => {
  if (standstill(condition, pass, turns) !== null) return 0
  return condition.pawlDouble || turns.jumped.has(pass) ? 2 : 1
}

/** The passes before which the turn may be unlike the others at its side. */
export const oddTurns = ({ turns }: Condition): number[] => [
  ...new Set([...turns.short, ...turns.skipped, ...turns.jumped]),
]

const noTurnFaults: TurnFaults = { short: new Set(), skipped: new Set(), jumped: new Set() }

/** Rows by which the card steps at a turn at which nothing happens that does not happen at each turn of its side. */
const usualSteps = (condition: Condition, pass: number): 0 | 1 | 2 =>
  stepsAtTurn(condition, pass, noTurnFaults)

/** Card row, from 1, that the sound machine reads in pass `pass`; null without a card. */
export const dueRow = (condition: Condition, pass: number): CardRow | null =>
  condition.card ? toCardRow(modulo(pass - 1, condition.card.length) + 1, condition.card.length) : null

/**
 * Card row, from 1, that this machine reads in pass `pass`; null without a card. Row 1 is read in pass 1, and the
 * card is a loop. Counts the turns at each side instead of walking them.
 */
export const rowRead = (condition: Condition, pass: number): CardRow | null => {
  if (!condition.card) return null
  const rows = condition.card.length
  const turns = pass - 1
  const turnsRight = Math.ceil(turns / 2)
  let steps = turnsRight * usualSteps(condition, 2) + (turns - turnsRight) * usualSteps(condition, 3)
  for (const odd of oddTurns(condition))
    if (odd <= pass) steps += stepsAtTurn(condition, odd) - usualSteps(condition, odd)
  return toCardRow(modulo(steps, rows) + 1, rows)
}

/** The first turn, by the pass before which it is, at which the card did not go on by one row; null for none. */
const firstWrongTurn = (condition: Condition, pass: number): number | null => {
  const candidates = [2, 3, ...oddTurns(condition)].filter((turn) => turn <= pass)
  const wrong = candidates.filter((turn) => stepsAtTurn(condition, turn) !== 1)
  return wrong.length === 0 ? null : Math.min(...wrong)
}

/**
 * The part that made the card show another row in pass `pass` than the one due: the one that stopped the first wrong
 * turn, or moved the card on too far. The card itself where every turn was right.
 */
export const partOfWrongRow = (condition: Condition, pass: number): PartId => {
  const turn = firstWrongTurn(condition, pass)
  if (turn === null) return 'card'
  const trouble = standstill(condition, turn)
  if (trouble === null) return condition.pawlDouble ? 'pawl' : `pawl.${sideOfTurn(turn)}`
  return trouble === 'pawl' ? `pawl.${sideOfTurn(turn)}` : trouble
}

/**
 * The pass before which the pins dropped and rose last, at pass `pass`: before pass 1, and at every turn past the mark,
 * whether or not the card stepped.
 */
export const pinsRaised = (condition: Condition, pass: number): number => {
  if (condition.beltOff) return 1
  let raised = pass
  while (condition.turns.short.has(raised)) raised--
  return raised
}

/** Where the carriage is: in which pass, and at which x along the bed in needles. */
export interface CarriagePosition {
  readonly pass: number
  readonly at: number
}

/** What sliding the carriage by hand came to. */
export interface Slide extends CarriagePosition {
  /** 'mark' where it passed the turn mark, 'short' where it turned before it, else null. */
  readonly turned: 'mark' | 'short' | null
}

/**
 * Slides the carriage to `to`, as a hand does. Reaching the turn mark ends the pass and steps the card. Going back
 * over the last needle from beyond it, short of the mark, ends the pass too, but as a short turn. Anywhere else
 * going back only winds the pass back.
 */
export const slide = (from: CarriagePosition, to: number, bed: Bed): Slide => {
  const way = wayOfPass(from.pass)
  const { start, end } = passEnds(from.pass, bed)
  const at = Math.min(Math.max(to, Math.min(start, end)), Math.max(start, end))
  if (way * (at - end) >= 0) return { pass: from.pass + 1, at: end, turned: 'mark' }
  const last = end - way * dimensions.turnMark
  const wasBeyond = way * (from.at - last) > 0
  const isBack = way * (at - last) <= 0
  return wasBeyond && isBack
    ? { pass: from.pass + 1, at, turned: 'short' }
    : { pass: from.pass, at, turned: null }
}
