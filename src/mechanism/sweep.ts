import type { Way } from './bed.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'
import type { Column } from './indices.ts'

const half = dimensions.columns / 2

/** Wraps a distance in needles into (-12, 12]: the sweep meets each column once in 24 needles. */
export const wrap = (distance: number): number =>
  distance - dimensions.columns * Math.ceil((distance - half) / dimensions.columns)

/** How far the belt has the sweep from where it should be, in needles to the right, in a pass of this way. */
export const beltError = (condition: Condition, way: Way): number =>
  condition.timing + (way * condition.slack) / 2

/** Where along the bed the sweep would be if it were on the carriage, which is at `x`; all in needles. */
export const sweepX = (condition: Condition, x: number, way: Way): number =>
  x + condition.timing + (way * condition.slack) / 2

/** Index of the needle, in the middle of the bed, that is one to the left of column 1's. */
export const beforeFirstColumn = dimensions.needles / 2 - 1

/** How far the sweep is past the pin of a column with the carriage at `x`, in needles to the right. */
export const sweepPast = (condition: Condition, column: Column, x: number, way: Way): number =>
  wrap(sweepX(condition, x, way) - (beforeFirstColumn + column))

/** Share of the full throw at `past` needles from the pin's middle: a raised cosine, 0 beyond `sweepHalf`. */
export const sweepWindow = (past: number): number =>
  Math.abs(past) < dimensions.sweepHalf ? (1 + Math.cos((Math.PI * past) / dimensions.sweepHalf)) / 2 : 0

/** How many needles from the pin's middle the push falls to this share, 0 to 1, of the full throw. */
export const windowOfShare = (share: number): number =>
  (dimensions.sweepHalf / Math.PI) * Math.acos(Math.min(1, 2 * share - 1))

/** The most that the sweep pushes a pin of this height aside, in mm. */
export const fullPush = (condition: Condition, height: number): number =>
  dimensions.sweepThrow * Math.min(1, Math.max(0, (height - condition.sweepEdge) / dimensions.fullBite))

/** Overlap of pin and sweep, in mm, that gives a push of so many mm. */
export const biteForPush = (push: number): number => (dimensions.fullBite * push) / dimensions.sweepThrow
