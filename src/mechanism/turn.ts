import { type Bed, modulo, passEnds, sideOfTurn, wayOfPass } from './bed.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'
import { type CardRow, toCardRow } from './indices.ts'

/** Rows by which the card steps at the turn before pass `pass` (2 or more). */
export const stepsAtTurn = (condition: Condition, pass: number): 0 | 1 | 2 => {
  const side = sideOfTurn(pass)
  if (condition.shortTurns.has(pass) || condition.cardLocked || condition.pawlDead[side]) return 0
  return condition.pawlDouble ? 2 : 1
}

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
  if (condition.cardLocked) return toCardRow(1, rows)
  const turns = pass - 1
  const turnsRight = Math.ceil(turns / 2)
  let counted = 0
  if (!condition.pawlDead.right) counted += turnsRight
  if (!condition.pawlDead.left) counted += turns - turnsRight
  for (const short of condition.shortTurns)
    if (short <= pass && !condition.pawlDead[sideOfTurn(short)]) counted--
  return toCardRow(modulo(counted * (condition.pawlDouble ? 2 : 1), rows) + 1, rows)
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
