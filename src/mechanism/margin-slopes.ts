import type { Way } from './bed.ts'
import { type Condition, presserOf } from './condition.ts'
import { medianButtReturn, travelTime } from './gate.ts'
import { lastHold, type MarginId } from './margins.ts'
import type { OwnName } from './own.ts'
import type { Run } from './pass.ts'
import { type Release, releaseOf, shiftAfter, shiftEightOn } from './release.ts'
import { outOfPush, pushForReach } from './rocker.ts'
import { beltLead, biteForPush, fullPush, leadOf, sweepSlope, sweepWindow } from './sweep.ts'
import { constantsBetween, decay, travelIn } from './travel.ts'
import { wornDimensions } from './wear.ts'
import { dimensions as training } from './dimensions.ts'

/** What margins depend on: the dimensions that can be measured, and the belt's play and its timing in needles. */
export type SlopeName = OwnName | 'slack' | 'timing'

/** By how much a margin, in mm, grows for each unit that a dimension has more; nought for those left out. */
export type Slopes = { readonly [Name in SlopeName]?: number }

/** Slopes added up, each times a factor. */
const sum = (...parts: readonly (readonly [factor: number, slopes: Slopes])[]): Slopes => {
  const all: { [Name in SlopeName]?: number } = {}
  for (const [factor, slopes] of parts)
    for (const [name, slope] of Object.entries(slopes) as [SlopeName, number][])
      all[name] = (all[name] ?? 0) + factor * slope
  return all
}

/** How the push of a high pin on the flat of the sweep depends on what is measured. */
const pushSlopes = ({ beltOff, sweepEdge, dimensions }: Condition): Slopes => {
  const { pinHigh, fullBite, sweepThrow } = dimensions
  const share = (pinHigh - sweepEdge) / fullBite
  if (beltOff || share <= 0) return {}
  if (share >= 1) return { sweepThrow: 1 }
  return {
    sweepThrow: share,
    pinHigh: sweepThrow / fullBite,
    sweepEdge: -sweepThrow / fullBite,
    fullBite: (-sweepThrow * share) / fullBite,
  }
}

/** How early the belt has the sweep in a pass of this way depends on its play and its timing alone. */
const earlySlopesOf = (way: Way): Slopes => ({ slack: -1 / 2, timing: way })

/** How much later the last place comes at which a catch must still hold, for each unit more. */
const lastHoldSlopes = (condition: Condition, early: number, earlySlopes: Slopes): Slopes => {
  const { dimensions, gate1, speed } = condition
  const { pitch, catchDepth } = dimensions
  const lead = leadOf(dimensions)
  const leadSlopes: Slopes = { gateLag: 1 / 2 }
  const butt = medianButtReturn(condition)
  const time = gate1 <= 0 ? 0 : butt * Math.max(0, constantsBetween(catchDepth, gate1))
  if (gate1 <= 0 || early + lead - travelIn(dimensions, time, speed) <= early - lead)
    return sum([1, earlySlopes], [-1, leadSlopes])
  const needles = travelIn(dimensions, 1, speed)
  const ofTime: Slopes =
    time === 0
      ? {}
      : {
          catchDepth: (-butt * needles) / catchDepth,
          gate1: (butt * needles) / gate1,
          pitch: (time * needles) / pitch,
          ...(condition.retainer === 0 ? { buttReturn: (-time * needles) / butt } : {}),
        }
  return sum([1, earlySlopes], [1, leadSlopes], [1, ofTime])
}

/** A push that comes by, and what the slopes of a strip's shift need of it. */
interface Push {
  readonly condition: Condition
  readonly push: number
  readonly lost: number
  /** Time constant of the strip's return, in needles of travel. */
  readonly constant: number
  readonly release: Release
}

/** How the shift of a strip that is pushed, `past` needles after the middle of the sweep, depends on all. */
const pushedSlopes = ({ condition, push, lost }: Push, past: number, pastSlopes: Slopes): Slopes => {
  const { dimensions } = condition
  const { ratio } = dimensions
  const window = sweepWindow(dimensions, past)
  if (outOfPush(dimensions, push * window, lost) === 0) return {}
  return sum(
    [ratio * window, pushSlopes(condition)],
    [ratio * push * sweepSlope(dimensions, past), pastSlopes],
    [1, { lost: -1, ratio: push * window }],
  )
}

/**
 * The same for a strip that has left its rocker. Where it leaves, its spring follows just as fast as the push falls, so
 * a little sooner or later makes no difference there: what decides where it leaves has no slope of its own.
 */
const returningSlopes = (given: Push, past: number, pastSlopes: Slopes): Slopes => {
  const { condition, push, constant, release } = given
  const { dimensions } = condition
  const { ratio, preload, pitch, stripReturn } = dimensions
  if (release.leavesWith === 0) return {}
  const window = sweepWindow(dimensions, release.leavesAt)
  const since = past - release.leavesAt
  const left = decay(since, constant)
  const pulled = (release.leavesWith + preload) * left
  const isAsMade = condition.stripReturn.includes(stripReturn)
  const ofConstant: Slopes = {
    pitch: -constant / pitch,
    ...(isAsMade ? { stripReturn: constant / stripReturn } : {}),
  }
  return sum(
    [left * ratio * window, pushSlopes(condition)],
    [left, { lost: -1, ratio: push * window, preload: 1 }],
    [-1, { preload: 1 }],
    [-pulled / constant, pastSlopes],
    [(pulled * since) / constant ** 2, ofConstant],
  )
}

/**
 * By how much each margin of a pass grows for each unit more of what can be measured, in closed form: mm for each mm, each
 * needle or each ms. Where a margin has a corner, at a clamp, it is the slope of one of its sides.
 */
export const marginSlopes = ({ condition, scenario }: Run, way: Way): Readonly<Record<MarginId, Slopes>> => {
  const { dimensions, speed } = condition
  const { ratio, sweepThrow, fullBite, gateLag, pitch } = dimensions
  const { lost } = wornDimensions(dimensions, scenario.wear)
  const early = beltLead(condition, way)
  const lead = leadOf(dimensions)
  const push = fullPush(condition, dimensions.pinHigh)
  const pushWith = (ms: number): Push => {
    const constant = travelIn(dimensions, ms, speed)
    return { condition, push, lost, constant, release: releaseOf(dimensions, push, lost, constant) }
  }
  const slowest = pushWith(Math.max(...condition.stripReturn))
  const quickest = pushWith(Math.min(...condition.stripReturn))

  const earlySlopes = earlySlopesOf(way)
  const atPresser = sum([1, earlySlopes], [-1, { gateLag: 1 / 2 }])
  const bite = biteForPush(dimensions, pushForReach(dimensions, condition.reach, lost))
  const eightOn = training.strips - lead + early
  const left = shiftEightOn(dimensions, push, lost, slowest.constant, early)
  const last = lastHold(condition, early)
  const lastSlopes = lastHoldSlopes(condition, early, earlySlopes)
  const pushed = outOfPush(dimensions, push * sweepWindow(dimensions, last), lost)
  const isFollowing = shiftAfter(dimensions, quickest.release, last, quickest.constant) === pushed

  const presserName = way === 1 ? 'presserRight' : 'presserLeft'
  const dip = Math.max(0, presserOf(condition, way))
  const dipSlopes: Slopes = dip > 0 ? { [presserName]: 1 } : {}
  const butt = medianButtReturn(condition)
  const time = travelTime(condition, gateLag)
  const still = decay(time, butt)
  return {
    hole: { hole: 1 / 2, pin: -1 / 2 },
    lowPin: { sweepEdge: 1, pinLow: -1 },
    highPin: {
      pinHigh: 1,
      sweepEdge: -1,
      reach: -fullBite / (ratio * sweepThrow),
      lost: -fullBite / (ratio * sweepThrow),
      sweepThrow: bite / sweepThrow,
      ratio: bite / ratio,
      fullBite: -bite / fullBite,
    },
    push: sum([1, pushedSlopes(quickest, early - lead, atPresser)], [-1, { reach: 1 }]),
    release: sum([1, { reach: 1 }], [left > 0 ? -1 : 0, returningSlopes(slowest, eightOn, atPresser)]),
    dip: sum([1, dipSlopes], [-1, { catchDepth: 1 }]),
    held: sum(
      [
        1,
        isFollowing ? pushedSlopes(quickest, last, lastSlopes) : returningSlopes(quickest, last, lastSlopes),
      ],
      [-1, { letGo: 1 }],
    ),
    heldUnderFirst: { catchDepth: 1, gate1: -1 },
    freeOverFirst: sum(
      [1, { gate1: 1 }],
      [-still, dipSlopes],
      [
        (dip * still * time) / butt,
        {
          pitch: 1 / pitch,
          gateLag: 1 / gateLag,
          ...(condition.retainer === 0 ? { buttReturn: -1 / butt } : {}),
        },
      ],
    ),
    heldOverSecond: { gate2: 1, catchDepth: -1 },
  }
}
