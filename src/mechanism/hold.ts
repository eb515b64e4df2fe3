import type { Way } from './bed.ts'
import { type Condition, presserOf } from './condition.ts'
import { dimensions } from './dimensions.ts'

/** How far the presser dips the butt of needle `index`, in mm; never less than 0. */
export const dipOf = (condition: Condition, index: number, way: Way): number =>
  Math.max(0, presserOf(condition, way) + (condition.buttError[index] ?? 0))

/** How deep the catch of needle `index` keeps a butt, in mm below where that butt rests. */
export const catchDepthOf = (condition: Condition, index: number): number =>
  dimensions.catchDepth + (condition.catchError[index] ?? 0)

/** Whether the presser dips the butt of needle `index` far enough for its catch. */
export const dipsEnough = (condition: Condition, index: number, way: Way): boolean =>
  dipOf(condition, index, way) >= catchDepthOf(condition, index)

/** Whether the catch of needle `index` keeps its butt down when the presser lets go with its strip shifted so far. */
export const isHeld = (condition: Condition, index: number, way: Way, shift: number): boolean =>
  shift >= condition.reach &&
  !condition.catchBroken[index] &&
  !condition.needleBent[index] &&
  !condition.needleGone[index] &&
  dipsEnough(condition, index, way)
