import { stripOfNeedle } from '../mechanism/bed.ts'
import type { Condition } from '../mechanism/condition.ts'
import { outcomeOf } from '../mechanism/gate.ts'
import { isHeld } from '../mechanism/hold.ts'
import type { Needle } from '../mechanism/indices.ts'
import { type PassDrive, stripShift } from '../mechanism/strip.ts'
import { codes } from './packed-change.ts'

/** How one needle comes out of a pass, as a code: the outcome that `runPass` has, without the reason. */
export const needleCode = (condition: Condition, drive: PassDrive, needle: Needle): number => {
  const shift = stripShift(condition, drive, stripOfNeedle(needle), needle)
  const held = isHeld(condition, needle, drive.way, shift)
  return codes[outcomeOf(condition, needle, drive.way, drive.pass, held)]
}
