import type { Condition } from './condition.ts'
import {
  type Column,
  markOfColumn,
  markOfStrip,
  measureOfColumn,
  measureOfStrip,
  type Strip,
} from './indices.ts'
import { constantsHome } from './release.ts'
import { fullShift, rockerOut } from './rocker.ts'
import { pinStates, stripStates } from './states.ts'

/*
 * What a hand feels at the parts of a machine that stands still. Lengths in mm, times in ms.
 */

/** Below this nobody sees that a part takes any time to spring back. Common practice, no source. */
export const atOnce = 100

/** A strip whose end is pushed along the bed with a fingertip and let go. */
export interface StripFelt {
  /** Where it is before, pushed, and at last. */
  readonly before: number
  readonly pushed: number
  readonly after: number
  /** How long it takes to come back to its stop; Infinity where it does not. */
  readonly backIn: number
}

/** What a hand feels of a strip: its return spring brings it back against its preload, as in a pass. */
export const stripFelt = (condition: Condition, strip: Strip): StripFelt => {
  const stuck = markOfStrip(condition.stripStuck, strip)
  if (stuck === stripStates.seized) return { before: 0, pushed: 0, after: 0, backIn: 0 }
  const full = fullShift(condition.dimensions)
  if (stuck === stripStates.over) return { before: full, pushed: full, after: full, backIn: Infinity }
  const backIn = measureOfStrip(condition.stripReturn, strip) * constantsHome(condition.dimensions, full)
  return { before: 0, pushed: full, after: 0, backIn }
}

/** A pin that is pressed down with a fingertip and let go, with the card out. */
export interface PinFelt {
  /** Height of its tip before it is pressed; it is pressed down to `pressed`. */
  readonly before: number
  readonly pressed: number
  /** The chance that it fails to come up again: 1 where it never does. */
  readonly stays: number
}

/** What a hand feels of the pin of a column, with the card out: its lift spring brings it up. */
export const pinFelt = (condition: Condition, column: Column): PinFelt => {
  const { pinHigh, pinLow } = condition.dimensions
  const stuck = markOfColumn(condition.pinStuck, column)
  if (stuck === pinStates.low) return { before: pinLow, pressed: pinLow, stays: 1 }
  if (stuck === pinStates.high) return { before: pinHigh, pressed: pinHigh, stays: 0 }
  return { before: pinHigh, pressed: pinLow, stays: measureOfColumn(condition.pinSticky, column) }
}

/** How far a strip goes to the right as the front leg of a column's pin is pushed to the left by the sweep's throw. */
export const rodFelt = (condition: Condition, column: Column): number =>
  rockerOut(condition, column, condition.dimensions.sweepThrow)
