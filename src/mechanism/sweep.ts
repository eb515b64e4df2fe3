import type { CardPlace, Way } from './bed.ts'
import type { Condition } from './condition.ts'
import { type Dimensions, dimensions } from './dimensions.ts'
import type { Column } from './indices.ts'

const { columns } = dimensions
const half = columns / 2

/** Wraps a distance in needles into (-12, 12]: the sweep meets each column once in 24 needles. */
export const wrap = (distance: number): number => distance - columns * turnsOf(distance)

/** How many times the sweep has gone round at a distance in needles that is not wrapped. */
export const turnsOf = (distance: number): number => Math.ceil((distance - half) / columns)

/**
 * How far behind the presser's release the middle of the sweep passes the same needle's pin, in needles of travel: the
 * needle is then halfway between the presser and the first gate.
 */
export const leadOf = ({ gateLag }: Dimensions): number => gateLag / 2

/** How far from the middle of the wedge its push ends, in needles of travel. */
export const sweepEnd = ({ sweepFlat, sweepRamp }: Dimensions): number => sweepFlat + sweepRamp

/**
 * How far the belt has the sweep from where it should be, in needles to the right, in a pass of this way. Slack makes
 * the sweep late, whichever way the carriage goes.
 */
export const beltError = (condition: Condition, way: Way): number =>
  condition.timing - (way * condition.slack) / 2

/** How early the belt has the sweep, in needles of travel, in a pass of this way; negative where it is late. */
export const beltLead = (condition: Condition, way: Way): number => way * beltError(condition, way)

/** Where along the bed the middle of the sweep would be if it were on the carriage, at `x`; all in needles. */
export const sweepX = (condition: Condition, x: number, way: Way): number =>
  x - way * leadOf(condition.dimensions) + beltError(condition, way)

/** Index of the place along the bed that is one needle to the left of column 1's. */
export const beforeFirstColumn = ({ columnOne }: CardPlace): number => columnOne - 1

/**
 * How far the sweep's middle is to the right of where it meets the pin of a column, with the carriage at `x`, in
 * needles; it meets the pin again every 24 needles, by the count of `turnsOf`.
 */
export const sweepDistance = (condition: Condition, column: Column, x: number, way: Way): number =>
  sweepX(condition, x, way) - (beforeFirstColumn(condition) + column)

/**
 * Share of the full throw at `past` needles from the middle of the wedge: 1 along its flat, half a cosine on its
 * ramps, 0 beyond.
 */
export const sweepWindow = ({ sweepFlat, sweepRamp }: Dimensions, past: number): number => {
  const up = Math.abs(past) - sweepFlat
  if (up <= 0) return 1
  return up < sweepRamp ? (1 + Math.cos((Math.PI * up) / sweepRamp)) / 2 : 0
}

/** How fast that share grows `past` needles from the middle of the wedge, for each needle more. */
export const sweepSlope = ({ sweepFlat, sweepRamp }: Dimensions, past: number): number => {
  const up = Math.abs(past) - sweepFlat
  if (up <= 0 || up >= sweepRamp) return 0
  return -Math.sign(past) * (Math.PI / (2 * sweepRamp)) * Math.sin((Math.PI * up) / sweepRamp)
}

/** The pressure angle of the wedge where its ramps are steepest, in degrees, before it is sheared. */
export const sweepAngle = ({ sweepThrow, sweepRamp, pitch }: Dimensions): number =>
  (180 / Math.PI) * Math.atan((Math.PI * sweepThrow) / (2 * sweepRamp * pitch))

/** How many needles from the middle of the wedge the push falls to this share, 0 to 1, of the full throw. */
export const windowOfShare = ({ sweepFlat, sweepRamp }: Dimensions, share: number): number =>
  sweepFlat + (sweepRamp / Math.PI) * Math.acos(Math.min(1, 2 * share - 1))

/** The most that the sweep pushes a pin of this height to the left, in mm. */
export const fullPush = ({ beltOff, sweepEdge, dimensions }: Condition, height: number): number => {
  const { sweepThrow, fullBite } = dimensions
  return beltOff ? 0 : sweepThrow * Math.min(1, Math.max(0, (height - sweepEdge) / fullBite))
}

/** Overlap of pin and sweep, in mm, that gives a push of so many mm. */
export const biteForPush = ({ fullBite, sweepThrow }: Dimensions, push: number): number =>
  (fullBite * push) / sweepThrow
