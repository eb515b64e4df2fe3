import { isPunched } from './card.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'
import { type CardRow, type Column, markOfColumn, measureOfColumn, toColumn } from './indices.ts'
import { holeKey, pinStates } from './states.ts'

/** How far the card's hole is from a column's pin, in mm. */
export const misplacement = (condition: Condition, column: Column): number =>
  Math.hypot(condition.cardSide, condition.cardSkew * (column - (dimensions.columns + 1) / 2))

/** How far a hole may be misplaced before its pin no longer fits, in mm. */
export const holeClearance = (dimensions.hole - dimensions.pin) / 2

/** Whether the sound machine finds a hole over the pin of `column` with the card as punched. `row` null: no card. */
export const holePunched = (condition: Condition, row: CardRow | null, column: Column): boolean =>
  row === null || isPunched(condition.card, row, column)

/** Whether the card in the reader has a hole for `column` in this row now, torn, blocked or reversed as it may be. */
export const holeNow = (condition: Condition, row: CardRow, column: Column): boolean => {
  const own = condition.cardReversed ? toColumn(dimensions.columns + 1 - column) : column
  return condition.holes.get(holeKey(row, own)) ?? isPunched(condition.card, row, own)
}

/** Whether the card, as it lies in the reader now, lets the pin of `column` through. `row` null: no card. */
export const holePresented = (condition: Condition, row: CardRow | null, column: Column): boolean =>
  row === null || (holeNow(condition, row, column) && misplacement(condition, column) <= holeClearance)

/** Height of the pin's tip in mm above the reader's datum. `row` null: no card. */
export const pinHeight = (condition: Condition, row: CardRow | null, column: Column): number => {
  const stuck = markOfColumn(condition.pinStuck, column)
  const high = stuck === pinStates.free ? holePresented(condition, row, column) : stuck === pinStates.high
  return (high ? dimensions.pinHigh : dimensions.pinLow) + measureOfColumn(condition.pinError, column)
}
