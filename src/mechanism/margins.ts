import type { Way } from './bed.ts'
import { type Condition, presserOf } from './condition.ts'
import { dimensions } from './dimensions.ts'
import type { Stage } from './fault-kinds.ts'
import { medianButtReturn, springing, travelTime } from './gate.ts'
import { presserDip } from './hold.ts'
import { allColumns } from './indices.ts'
import { at, lastOf } from './lookup.ts'
import { normalCdf } from './normal.ts'
import { holeClearance, misplacement } from './pin.ts'
import type { Run } from './pass.ts'
import { outOfPush, pushForReach } from './rocker.ts'
import { beltError, biteForPush, fullPush, sweepWindow } from './sweep.ts'
import { shiftEightOn } from './strip.ts'
import { travelIn } from './travel.ts'
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
 * The margins of every stage in a pass of this way, for a part of ordinary make (no scatter): what wear, oil, speed
 * and the faults that touch every needle leave. Lengths in mm.
 */
export const margins = (run: Run, way: Way): Margin[] => {
  const { condition, scenario } = run
  const lost = wornDimensions(scenario.wear).lost
  const misplaced = Math.max(
    misplacement(condition, at(allColumns, 0)),
    misplacement(condition, lastOf(allColumns)),
  )
  const past = beltError(condition, way)
  const push = fullPush(condition, dimensions.pinHigh)
  const peak = outOfPush(push * sweepWindow(past), lost)
  const slowest = travelIn(Math.max(...condition.stripReturn), condition.speed)
  const left = shiftEightOn(push, lost, slowest, way * past)
  const dip = presserDip(condition, way)
  const time = travelTime(condition, dimensions.gateLag)
  const free = springing(dip, time, medianButtReturn(condition))
  const bite = biteForPush(pushForReach(condition.reach, lost))
  return [
    { id: 'hole', stage: 'card', mm: holeClearance - misplaced },
    { id: 'lowPin', stage: 'pin', mm: condition.sweepEdge - dimensions.pinLow },
    { id: 'highPin', stage: 'sweep', mm: dimensions.pinHigh - condition.sweepEdge - bite },
    { id: 'push', stage: 'rocker', mm: peak - condition.reach },
    { id: 'release', stage: 'strip', mm: condition.reach - left },
    { id: 'dip', stage: 'hold', mm: dip - dimensions.catchDepth },
    { id: 'heldUnderFirst', stage: 'gate', mm: dimensions.catchDepth - condition.gate1 },
    { id: 'freeOverFirst', stage: 'gate', mm: condition.gate1 + free },
    { id: 'heldOverSecond', stage: 'gate', mm: dimensions.gate2 - dimensions.catchDepth },
  ]
}

/** The margin of an id among a machine's margins. Throws a RangeError where it is not there. */
export const marginOf = (all: readonly Margin[], id: MarginId): Margin => {
  const found = all.find((margin) => margin.id === id)
  if (!found) throw new RangeError(`there is no margin “${id}”`)
  return found
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
  const fits = allColumns.filter((column) => misplacement(condition, column) <= holeClearance)
  return fits.length / dimensions.columns
}

/**
 * Chance, 0 to 1, that a needle under a hole is held and passes under the first gate, over all machines of this
 * wear. Exact but for the integral over the pins' scatter (Simpson's rule).
 */
export const chanceOfSelection = (run: Run, way: Way): number => {
  const { condition, scenario } = run
  const deviation = scatter(scenario.wear)
  const past = beltError(condition, way)
  const both = Math.hypot(deviation.catch, deviation.butt)
  const deepest = Math.min(presserOf(condition, way), dimensions.gate2) - dimensions.catchDepth
  const shallowest = condition.gate1 - dimensions.catchDepth
  const chanceOfHold = Math.max(0, chanceOfMargin(deepest, both) - 1 + chanceOfMargin(-shallowest, both))
  return chanceOfFit(condition) * chanceOfPush(condition, scenario.wear, sweepWindow(past)) * chanceOfHold
}
