import { stripOfNeedle } from '../mechanism/bed.ts'
import type { Condition } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import {
  buttReturnOf,
  freeHeight,
  heldHeight,
  type Outcome,
  sortByHeight,
  travelTime,
} from '../mechanism/gate.ts'
import { isHeld } from '../mechanism/hold.ts'
import { type PassDrive, stripShift } from '../mechanism/strip.ts'

/** Outcomes as small numbers, so that beds are cheap to keep and to compare. */
export const codes = { selected: 0, plain: 1, unmoved: 2 } as const satisfies Record<Outcome, number>

/** How one needle comes out of a pass, as `runPass` has it, without the reason. */
export const needleCode = (condition: Condition, drive: PassDrive, index: number): number => {
  if (condition.needleGone[index]) return codes.unmoved
  const shift = stripShift(condition, drive, stripOfNeedle(index), index)
  const height = isHeld(condition, index, drive.way, shift)
    ? heldHeight(condition, index)
    : freeHeight(
        condition,
        index,
        drive.way,
        travelTime(condition, dimensions.gateLag),
        buttReturnOf(condition, index, drive.pass),
      )
  return codes[sortByHeight(height, condition.gate1)]
}

/** One changed needle as a number: its index and how it comes out instead. */
export const change = (needle: number, code: number): number => needle * 4 + code
export const changedNeedle = (change: number): number => change >> 2
export const changedCode = (change: number): number => change & 3
