import { isPunched } from './card.ts'
import type { Condition } from './condition.ts'
import { type Dimensions, dimensions } from './dimensions.ts'
import { type CardRow, type Column, markOfColumn, measureOfColumn, toColumn } from './indices.ts'
import { uniformDraw } from './random.ts'
import { holeKey, pinStates } from './states.ts'

/** How far the card's hole is from a column's pin, in mm. */
export const misplacement = (condition: Condition, column: Column): number =>
  Math.hypot(condition.cardSide, condition.cardSkew * (column - (dimensions.columns + 1) / 2))

/** How far a hole may be misplaced before its pin no longer fits, in mm. */
export const holeClearance = ({ hole, pin }: Dimensions): number => (hole - pin) / 2

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
  row === null ||
  (holeNow(condition, row, column) && misplacement(condition, column) <= holeClearance(condition.dimensions))

/** Whether old oil keeps the pin of `column` down since the turn before pass `raised`, at which pins rose last. */
const isStuckByOil = (condition: Condition, column: Column, raised: number): boolean => {
  const share = measureOfColumn(condition.pinSticky, column)
  return share > 0 && uniformDraw(condition.seed, 'sticky', column - 1, raised) < share
}

/** Halfway between a low pin's tip and a high one's, in mm: a pin above it is through its hole. */
export const midHeight = ({ pinHigh, pinLow }: Dimensions): number => (pinHigh + pinLow) / 2

/** What the pin of a column feels: the card row that is under it, null without a card, and when it rose last. */
export interface PinReading {
  readonly row: CardRow | null
  /** The pass before which the pins dropped and rose last. */
  readonly raised: number
}

/** Height of the pin's tip in mm above the reader's datum. */
export const pinHeight = (condition: Condition, { row, raised }: PinReading, column: Column): number => {
  const stuck = markOfColumn(condition.pinStuck, column)
  const rises = (): boolean =>
    holePresented(condition, row, column) && !isStuckByOil(condition, column, raised)
  const high = stuck === pinStates.free ? rises() : stuck === pinStates.high
  const { pinHigh, pinLow } = condition.dimensions
  return (high ? pinHigh : pinLow) + measureOfColumn(condition.pinError, column)
}
