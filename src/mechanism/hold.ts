import type { Way } from './bed.ts'
import { type Condition, presserOf } from './condition.ts'
import { type Needle, markOfNeedle, measureOfNeedle } from './indices.ts'

/**
 * How far the presser dips a butt in a pass of this way, in mm; never less than 0. `error` is how much higher than
 * drawn the butt is.
 */
export const presserDip = (condition: Condition, way: Way, error = 0): number =>
  Math.max(0, presserOf(condition, way) + error)

/** How far the presser dips the butt of a needle, in mm; never less than 0. */
export const dipOf = (condition: Condition, needle: Needle, way: Way): number =>
  presserDip(condition, way, measureOfNeedle(condition.buttError, needle))

/** How deep the catch of a needle keeps a butt, in mm below where that butt rests. */
export const catchDepthOf = (condition: Condition, needle: Needle): number =>
  condition.dimensions.catchDepth + measureOfNeedle(condition.catchError, needle)

/** Whether the presser dips the butt of a needle far enough for its catch. */
export const dipsEnough = (condition: Condition, needle: Needle, way: Way): boolean =>
  dipOf(condition, needle, way) >= catchDepthOf(condition, needle)

/**
 * Whether the catch of a needle takes its butt when the presser lets go with its strip shifted so far. With the
 * carriage not set to pattern the presser stands aside, and no catch takes anything.
 */
export const isTaken = (condition: Condition, needle: Needle, way: Way, shift: number): boolean =>
  shift >= condition.reach &&
  !condition.carriagePlain &&
  markOfNeedle(condition.catchBroken, needle) === 0 &&
  markOfNeedle(condition.needleBent, needle) === 0 &&
  markOfNeedle(condition.needleGone, needle) === 0 &&
  dipsEnough(condition, needle, way)
