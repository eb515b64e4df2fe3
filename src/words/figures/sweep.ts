import { columnOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Frame, needleUnderPresser } from '../../mechanism/frame.ts'
import { type Column, type Needle, toColumn } from '../../mechanism/indices.ts'

/** Where the sweep is in a picture. */
export interface SweepShown {
  /** Its middle, in columns: 1 at the first pin, at most 24.5. */
  readonly at: number
  /** The column whose pin it is at: the one whose needle the presser is letting go of. */
  readonly column: Column
  /** Whether it stands still, clear of all pins, because the belt is not engaged. */
  readonly isClear: boolean
}

/** The sweep of a frame: where the belt has it, or, with the belt not engaged, clear of the pins in the middle. */
export const sweepShown = ({ condition, sweepAt, column }: Frame): SweepShown => {
  if (!condition.beltOff) return { at: sweepAt, column, isClear: false }
  const middle = dimensions.columns / 2
  return { at: middle + 0.5, column: toColumn(middle), isClear: true }
}

/** The needle that the presser is letting go of, where the sweep is at the pin of its column; else null. */
export const needleAtPin = (frame: Frame): Needle | null => {
  const needle = needleUnderPresser(frame.condition, frame.x)
  const { column, isClear } = sweepShown(frame)
  return needle !== null && !isClear && columnOfNeedle(needle, frame.condition) === column ? needle : null
}
