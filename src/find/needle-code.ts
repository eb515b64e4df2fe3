import { stripOfNeedle } from '../mechanism/bed.ts'
import type { Condition } from '../mechanism/condition.ts'
import type { PassDrive } from '../mechanism/drive.ts'
import { outcomeOf } from '../mechanism/gate.ts'
import { isTaken } from '../mechanism/hold.ts'
import type { Needle } from '../mechanism/indices.ts'
import { holdsFor, stripShift } from '../mechanism/strip.ts'
import { codes } from './packed-change.ts'

/** How one needle comes out of a pass, as a code: the outcome that `runPass` has, without the reason. */
export const needleCode = (condition: Condition, drive: PassDrive, needle: Needle): number => {
  const strip = stripOfNeedle(needle, condition)
  const shift = stripShift(condition, drive, strip, needle)
  const kept = isTaken(condition, needle, drive.way, shift) ? holdsFor(condition, drive, strip, needle) : 0
  return codes[outcomeOf(condition, needle, drive.way, drive.pass, kept)]
}
