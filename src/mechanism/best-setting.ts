import { sideOfWay, type Side, type Way } from './bed.ts'
import { presserOf } from './condition.ts'
import { medianButtReturn, travelTime } from './gate.ts'
import { dimensions as training } from './dimensions.ts'
import { lastHold } from './margins.ts'
import type { Run } from './pass.ts'
import { releaseOf } from './release.ts'
import { neededPush } from './rocker.ts'
import { beltLead, fullPush, leadOf, windowOfShare } from './sweep.ts'
import { constantsBetween, decay, travelIn } from './travel.ts'

/** What can be set on a machine. */
export type SettingName =
  | 'presserRight'
  | 'presserLeft'
  | 'gate1'
  | 'gate2'
  | 'sweepEdge'
  | 'timing'
  | 'seat'
  | 'bar'

/** What can be set, where it is, and where it leaves most room on both sides. */
export interface BestSetting {
  readonly name: SettingName
  readonly unit: 'mm' | 'needles' | 'teeth' | 'ms'
  /** Where it is, and where it should be, in its unit. */
  readonly now: number
  readonly best: number
  /** The lesser of the rooms on its two sides, in its unit, as it is and as it should be; negative where a side fails. */
  readonly roomNow: number
  readonly roomBest: number
}

/** Share of its dip that a free butt still has to come up when it is at the first gate. */
const stillDown = (run: Run): number => {
  const { condition } = run
  return decay(travelTime(condition, condition.dimensions.gateLag), medianButtReturn(condition))
}

/**
 * The presser in passes of this way: it must dip a butt as deep as its catch is, and no deeper than lets a free one come
 * up again before the first gate.
 */
const presserSetting = (run: Run, way: Way): BestSetting => {
  const { condition } = run
  const { catchDepth } = condition.dimensions
  const still = stillDown(run)
  const room = (dip: number): number => Math.min(dip - catchDepth, condition.gate1 - dip * still)
  const now = presserOf(condition, way)
  const best = (catchDepth + condition.gate1) / (1 + still)
  const names: Readonly<Record<Side, SettingName>> = { right: 'presserRight', left: 'presserLeft' }
  return { name: names[sideOfWay(way)], unit: 'mm', now, best, roomNow: room(now), roomBest: room(best) }
}

/** The first gate: its edge must be above a held butt, and below a free one, whichever way the carriage goes. */
const gateSetting = (run: Run): BestSetting => {
  const { condition } = run
  const { catchDepth } = condition.dimensions
  const free = Math.max(0, presserOf(condition, 1), presserOf(condition, -1)) * stillDown(run)
  const room = (edge: number): number => Math.min(catchDepth - edge, edge - free)
  const best = (catchDepth + free) / 2
  return {
    name: 'gate1',
    unit: 'mm',
    now: condition.gate1,
    best,
    roomNow: room(condition.gate1),
    roomBest: room(best),
  }
}

/**
 * The second gate: its edge must be below a held butt. Nothing bounds it from below but the bed, so it need not leave more
 * than the first gate leaves at its best.
 */
const secondGateSetting = (run: Run): BestSetting => {
  const { catchDepth, gate2 } = run.condition.dimensions
  const best = Math.max(gate2, catchDepth + Math.max(0, gateSetting(run).roomBest))
  return {
    name: 'gate2',
    unit: 'mm',
    now: gate2,
    best,
    roomNow: gate2 - catchDepth,
    roomBest: best - catchDepth,
  }
}

/**
 * The retainer bar: with it a free butt must come up to the first gate in time. A new one is taken to be as quick as the
 * training machine's; null where no bar would be quick enough or slow enough to matter.
 */
const barSetting = (run: Run): BestSetting | null => {
  const { condition } = run
  const dip = Math.max(0, presserOf(condition, 1), presserOf(condition, -1))
  if (condition.gate1 <= 0 || dip <= condition.gate1) return null
  const time = travelTime(condition, condition.dimensions.gateLag)
  const longest = time / constantsBetween(dip, condition.gate1)
  const [now, best] = [
    medianButtReturn(condition),
    Math.min(medianButtReturn(condition), training.buttReturn),
  ]
  return { name: 'bar', unit: 'ms', now, best, roomNow: longest - now, roomBest: longest - best }
}

/** The sweep's height over the pins: it must miss a low one, and meet a high one by enough for the catches' reach. */
const sweepSetting = (run: Run): BestSetting => {
  const { condition } = run
  const { pinLow, pinHigh, fullBite, sweepThrow } = condition.dimensions
  const bite = (fullBite * neededPush({ ...condition.dimensions, reach: condition.reach })) / sweepThrow
  const room = (edge: number): number => Math.min(edge - pinLow, pinHigh - edge - bite)
  const best = (pinLow + pinHigh - bite) / 2
  return {
    name: 'sweepEdge',
    unit: 'mm',
    now: condition.sweepEdge,
    best,
    roomNow: room(condition.sweepEdge),
    roomBest: room(best),
  }
}

/** How late and how early the sweep may be, in needles, for this machine to select; null where it never does. */
export const timingWindow = (run: Run): { readonly late: number; readonly early: number } | null => {
  const { condition } = run
  const { dimensions, speed } = condition
  const lead = leadOf(dimensions)
  const push = fullPush(condition, dimensions.pinHigh)
  const needed = neededPush({ ...dimensions, reach: condition.reach })
  if (push < needed) return null
  const taken = windowOfShare(dimensions, needed / push)
  const constant = travelIn(dimensions, Math.min(...condition.stripReturn), speed)
  const release = releaseOf(dimensions, push, dimensions.lost, constant)
  const { preload } = dimensions
  // A strip that has left its rocker is at the catches' reach for a little longer than it is pushed there.
  const reaches =
    release.leavesAt < taken
      ? release.leavesAt +
        constant * constantsBetween(release.leavesWith + preload, condition.reach + preload)
      : taken
  return { late: taken - lead, early: Math.min(release.holdsTo - lastHold(condition, 0), reaches + lead) }
}

/**
 * The belt, which can be set by whole teeth of a needle each, and then the reader's seat, by which the rest is set: how early
 * or late the sweep may be for the needle it sets out, in the worse of the two ways.
 */
const timingSettings = (run: Run): BestSetting[] => {
  const window = timingWindow(run)
  if (!window) return []
  const { timing } = run.condition
  const room = (set: number): number =>
    Math.min(
      ...([1, -1] as const).map((way) => {
        const early = beltLead({ ...run.condition, timing: set }, way)
        return Math.min(early + window.late, window.early - early)
      }),
    )
  // What helps one way harms the other: in the middle both have the same room.
  const rest = timing - Math.round(timing)
  return [
    { name: 'timing', unit: 'teeth', now: timing, best: rest, roomNow: room(timing), roomBest: room(rest) },
    { name: 'seat', unit: 'needles', now: rest, best: 0, roomNow: room(rest), roomBest: room(0) },
  ]
}

/** Everything that can be set on a machine, with where it leaves most room on both sides. */
export const bestSettings = (run: Run): BestSetting[] => {
  const bar = barSetting(run)
  return [
    presserSetting(run, 1),
    presserSetting(run, -1),
    gateSetting(run),
    secondGateSetting(run),
    sweepSetting(run),
    ...timingSettings(run),
    ...(bar ? [bar] : []),
  ]
}
