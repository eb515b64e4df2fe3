import type { Way } from './bed.ts'
import { type Condition, presserOf } from './condition.ts'
import { dimensions } from './dimensions.ts'
import type { Stage } from './fault-kinds.ts'
import { travelTime } from './gate.ts'
import { normalCdf } from './normal.ts'
import { holeClearance, misplacement } from './pin.ts'
import type { Run } from './pass.ts'
import { fullPush, sweepWindow } from './sweep.ts'
import { leavingPoint, returning } from './strip.ts'
import { scatter, wornDimensions } from './wear.ts'

/** What is left in mm before a stage fails: positive works. */
export interface Margin {
  readonly id: MarginId
  readonly stage: Stage
  readonly mm: number
}

/** Each way in which a stage may fail. */
export type MarginId =
  | 'hole'
  | 'lowPin'
  | 'highPin'
  | 'push'
  | 'release'
  | 'dip'
  | 'heldUnderFirst'
  | 'freeOverFirst'
  | 'heldOverSecond'

/**
 * Shift in mm left of the slowest strip, after a full push, when the presser lets go of the needle eight further on.
 * `past` is how far the sweep is then past the middle of a pin, in needles of travel, beyond those eight.
 */
const ghostShift = (condition: Condition, push: number, lost: number, past: number): number => {
  const slowest = Math.max(...condition.stripReturn)
  const decay = (slowest * condition.speed) / (1000 * dimensions.pitch)
  const leavesAt = leavingPoint((dimensions.ratio * push) / 2, lost, decay)
  if (leavesAt >= dimensions.sweepHalf) return 0
  const shift = dimensions.ratio * push * sweepWindow(leavesAt) - lost
  return shift <= 0 ? 0 : returning(shift, dimensions.strips + past - leavesAt, decay)
}

/**
 * The margins of every stage in a pass of this way, for a part of ordinary make (no scatter): what wear, oil, speed
 * and the faults that touch every needle leave. Lengths in mm.
 */
export const margins = (run: Run, way: Way): Margin[] => {
  const { condition, scenario } = run
  const lost = wornDimensions(scenario.wear).lost
  const misplaced = Math.max(misplacement(condition, 1), misplacement(condition, dimensions.columns))
  const past = condition.timing + (way * condition.slack) / 2
  const push = fullPush(condition, dimensions.pinHigh)
  const peak = Math.max(0, dimensions.ratio * push * sweepWindow(past) - lost)
  const dip = Math.max(0, presserOf(condition, way))
  const buttReturn = condition.retainer === 0 ? dimensions.buttReturn : condition.retainer
  const free = dip * Math.exp(-travelTime(condition, dimensions.gateLag) / buttReturn)
  const neededBite =
    (dimensions.fullBite * (condition.reach + lost)) / (dimensions.ratio * dimensions.sweepThrow)
  return [
    { id: 'hole', stage: 'card', mm: holeClearance - misplaced },
    { id: 'lowPin', stage: 'pin', mm: condition.sweepEdge - dimensions.pinLow },
    { id: 'highPin', stage: 'sweep', mm: dimensions.pinHigh - condition.sweepEdge - neededBite },
    { id: 'push', stage: 'rocker', mm: peak - condition.reach },
    { id: 'release', stage: 'strip', mm: condition.reach - ghostShift(condition, push, lost, way * past) },
    { id: 'dip', stage: 'hold', mm: dip - dimensions.catchDepth },
    { id: 'heldUnderFirst', stage: 'gate', mm: dimensions.catchDepth - condition.gate1 },
    { id: 'freeOverFirst', stage: 'gate', mm: condition.gate1 - free },
    { id: 'heldOverSecond', stage: 'gate', mm: dimensions.gate2 - dimensions.catchDepth },
  ]
}

/** The stage nearest to failing. */
export const leastMargin = (all: readonly Margin[]): Margin =>
  all.reduce((least, margin) => (margin.mm < least.mm ? margin : least))

/** Steps of Simpson's rule over the pins' scatter, and how many deviations it reaches to each side. */
const steps = 400
const reachOfScatter = 7

/** Chance that a part whose margin is so many mm, with errors of this deviation in mm, still works. */
const chanceOfMargin = (mm: number, deviation: number): number =>
  deviation === 0 ? Number(mm >= 0) : normalCdf(mm / deviation)

/** Chance that a pin of scattered height and a rocker of scattered lost motion push a strip to its reach. */
const chanceOfPush = (condition: Condition, wear: number, share: number): number => {
  const deviation = scatter(wear)
  const { lost } = wornDimensions(wear)
  const chance = (z: number): number => {
    const push = fullPush(condition, dimensions.pinHigh + z * deviation.pin) * share
    return chanceOfMargin(dimensions.ratio * push - lost - condition.reach, deviation.lost)
  }
  const width = (2 * reachOfScatter) / steps
  let sum = 0
  for (let n = 0; n <= steps; n++) {
    const z = -reachOfScatter + n * width
    const weight = n === 0 || n === steps ? 1 : n % 2 === 1 ? 4 : 2
    sum += weight * chance(z) * Math.exp((-z * z) / 2)
  }
  return Math.min(1, (sum * width) / 3 / Math.sqrt(2 * Math.PI))
}

/** Share of the columns whose holes let their pins through. */
const chanceOfFit = (condition: Condition): number => {
  let fits = 0
  for (let column = 1; column <= dimensions.columns; column++)
    if (misplacement(condition, column) <= holeClearance) fits++
  return fits / dimensions.columns
}

/**
 * Chance, 0 to 1, that a needle under a hole is held and passes under the first gate, over all machines of this
 * wear. Exact but for the integral over the pins' scatter (Simpson's rule).
 */
export const chanceOfSelection = (run: Run, way: Way): number => {
  const { condition, scenario } = run
  const deviation = scatter(scenario.wear)
  const past = condition.timing + (way * condition.slack) / 2
  const both = Math.hypot(deviation.catch, deviation.butt)
  const deepest = Math.min(presserOf(condition, way), dimensions.gate2) - dimensions.catchDepth
  const shallowest = condition.gate1 - dimensions.catchDepth
  const chanceOfHold = Math.max(0, chanceOfMargin(deepest, both) - 1 + chanceOfMargin(-shallowest, both))
  return chanceOfFit(condition) * chanceOfPush(condition, scenario.wear, sweepWindow(past)) * chanceOfHold
}
