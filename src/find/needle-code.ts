import { stripOfNeedle } from '../mechanism/bed.ts'
import type { Condition } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { buttReturnOf, freeHeight, heldHeight, sortByHeight, travelTime } from '../mechanism/gate.ts'
import { isHeld } from '../mechanism/hold.ts'
import { type PassDrive, stripShift } from '../mechanism/strip.ts'
import { codes } from './packed-change.ts'

/** How one needle comes out of a pass, as a code: the outcome that `runPass` has, without the reason. */
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
