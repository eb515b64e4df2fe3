import type { Way } from './bed.ts'
import type { Condition } from './condition.ts'
import type { Stage } from './fault-kinds.ts'
import { medianButtReturn, springing, travelTime } from './gate.ts'
import { presserDip } from './hold.ts'
import { allColumns } from './indices.ts'
import { at, lastOf } from './lookup.ts'
import { holeClearance, misplacement } from './pin.ts'
import type { Run } from './pass.ts'
import { releaseOf, shiftAfter, shiftEightOn } from './release.ts'
import { outOfPush, pushForReach } from './rocker.ts'
import { beltLead, biteForPush, fullPush, leadOf, sweepWindow } from './sweep.ts'
import { constantsBetween, travelIn } from './travel.ts'
import { wornDimensions } from './wear.ts'

/**
 * The last place, in needles of travel past the middle of the sweep, at which a catch must still hold a butt: one that
 * is let go later has not come up as far as the first gate when it is there.
 */
export const lastHold = (condition: Condition, early: number): number => {
  const { gate1, speed, dimensions } = condition
  const lead = leadOf(dimensions)
  if (gate1 <= 0) return early - lead
  const time = medianButtReturn(condition) * Math.max(0, constantsBetween(dimensions.catchDepth, gate1))
  return Math.max(early - lead, early + lead - travelIn(dimensions, time, speed))
}

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
  | 'held'
  | 'heldUnderFirst'
  | 'freeOverFirst'
  | 'heldOverSecond'

/**
 * The margins of every stage in a pass of this way, for a part of ordinary make (no scatter): what wear, oil, speed
 * and the faults that touch every needle leave. Lengths in mm.
 */
export const margins = (run: Run, way: Way): Margin[] => {
  const { condition, scenario } = run
  const { dimensions } = condition
  const { lost } = wornDimensions(dimensions, scenario.wear)
  const misplaced = Math.max(
    misplacement(condition, at(allColumns, 0)),
    misplacement(condition, lastOf(allColumns)),
  )
  const early = beltLead(condition, way)
  const push = fullPush(condition, dimensions.pinHigh)
  const peak = outOfPush(dimensions, push * sweepWindow(dimensions, early - leadOf(dimensions)), lost)
  const slowest = travelIn(dimensions, Math.max(...condition.stripReturn), condition.speed)
  const quickest = travelIn(dimensions, Math.min(...condition.stripReturn), condition.speed)
  const left = shiftEightOn(dimensions, push, lost, slowest, early)
  const kept = shiftAfter(
    dimensions,
    releaseOf(dimensions, push, lost, quickest),
    lastHold(condition, early),
    quickest,
  )
  const dip = presserDip(condition, way)
  const time = travelTime(condition, dimensions.gateLag)
  const free = springing(dip, time, medianButtReturn(condition))
  const bite = biteForPush(dimensions, pushForReach(dimensions, condition.reach, lost))
  return [
    { id: 'hole', stage: 'card', mm: holeClearance(dimensions) - misplaced },
    { id: 'lowPin', stage: 'pin', mm: condition.sweepEdge - dimensions.pinLow },
    { id: 'highPin', stage: 'sweep', mm: dimensions.pinHigh - condition.sweepEdge - bite },
    { id: 'push', stage: 'rocker', mm: peak - condition.reach },
    { id: 'release', stage: 'strip', mm: condition.reach - left },
    { id: 'dip', stage: 'hold', mm: dip - dimensions.catchDepth },
    { id: 'held', stage: 'hold', mm: kept - dimensions.letGo },
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
