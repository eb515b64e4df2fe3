import type { Way } from './bed.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'

const half = dimensions.columns / 2

/** Wraps a distance in needles into (-12, 12]: the sweep meets each column once in 24 needles. */
export const wrap = (distance: number): number =>
  distance - dimensions.columns * Math.ceil((distance - half) / dimensions.columns)

/** How far the sweep is past the pin of `column` (1 to 24) with the carriage at `x`, in needles to the right. */
export const sweepPast = (condition: Condition, column: number, x: number, way: Way): number =>
  wrap(x + condition.timing + (way * condition.slack) / 2 - (dimensions.needles / 2 - 1 + column))

/** Share of the full throw at `past` needles from the pin's middle: a raised cosine, 0 beyond `sweepHalf`. */
export const sweepWindow = (past: number): number =>
  Math.abs(past) < dimensions.sweepHalf ? (1 + Math.cos((Math.PI * past) / dimensions.sweepHalf)) / 2 : 0

/** The most that the sweep pushes a pin of this height aside, in mm. */
export const fullPush = (condition: Condition, height: number): number =>
  dimensions.sweepThrow * Math.min(1, Math.max(0, (height - condition.sweepEdge) / dimensions.fullBite))
