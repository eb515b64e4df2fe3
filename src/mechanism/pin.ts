import { hasHole } from './card.ts'
import { type Condition, holeKey } from './condition.ts'
import { dimensions } from './dimensions.ts'

/** How far the card's hole is from the pin of column 1 to 24, in mm. */
export const misplacement = (condition: Condition, column: number): number =>
  Math.hypot(condition.cardSide, condition.cardSkew * (column - (dimensions.columns + 1) / 2))

/** How far a hole may be misplaced before its pin no longer fits, in mm. */
export const holeClearance = (dimensions.hole - dimensions.pin) / 2

/** Whether the sound machine finds a hole over the pin of `column` with the card as punched. */
export const holePunched = (condition: Condition, row: number | null, column: number): boolean =>
  row === null || !condition.card || hasHole(condition.card[row - 1] ?? 0, column)

/** Whether the card in the reader has a hole for `column` in this row now, torn, blocked or reversed as it may be. */
export const holeNow = (condition: Condition, row: number, column: number): boolean => {
  const own = condition.cardReversed ? dimensions.columns + 1 - column : column
  return condition.holes.get(holeKey(row, own)) ?? hasHole(condition.card?.[row - 1] ?? 0, own)
}

/** Whether the card, as it lies in the reader now, lets the pin of `column` through. `row` from 1, null: no card. */
export const holePresented = (condition: Condition, row: number | null, column: number): boolean =>
  row === null || (holeNow(condition, row, column) && misplacement(condition, column) <= holeClearance)

/** Height of the pin's tip in mm above the reader's datum, for column 1 to 24. */
export const pinHeight = (condition: Condition, row: number | null, column: number): number => {
  const stuck = condition.pinStuck[column - 1] ?? 0
  const high = stuck === 0 ? holePresented(condition, row, column) : stuck > 0
  return (high ? dimensions.pinHigh : dimensions.pinLow) + (condition.pinError[column - 1] ?? 0)
}
