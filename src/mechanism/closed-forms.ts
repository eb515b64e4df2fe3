import { type Dimensions, dimensions } from './dimensions.ts'
import { fullShift, neededPush } from './rocker.ts'
import { releaseOf, shiftEightOn } from './release.ts'
import { leadOf, windowOfShare } from './sweep.ts'
import { constantsBetween, speedOver, timeOver, travelIn } from './travel.ts'

const { preload, reach, sweepThrow, lost, sweepFlat } = dimensions
const lead = leadOf(dimensions)

/** How close to the sweep's middle, in needles, a strip that follows its rocker is at the catches' reach. */
export const takenWithin = (of: Dimensions): number => windowOfShare(of, neededPush(of) / of.sweepThrow)

/** How late the sweep of a sound machine may be, in needles, for its catches still to take their butts. */
export const lateWindowOf = (of: Dimensions): number => takenWithin(of) - leadOf(of)

/** The same of the training machine. */
export const lateWindow = lateWindowOf(dimensions)

/** Slack of the belt, in needles, that alone changes nothing: half of it makes the sweep late. */
export const slackWindow = 2 * lateWindow

/** How early the sweep may be, in needles, for the catches still to hold their butts at the first gate, at a speed in mm/s. */
export const heldWindow = (speed: number, of: Dimensions = dimensions): number =>
  releaseOf(of, of.sweepThrow, of.lost, travelIn(of, of.stripReturn, speed)).holdsTo - leadOf(of)

/** Time in ms before the first gate within which a butt that is let go is still low enough to pass under it. */
const lowEnoughTimeOf = ({ buttReturn, catchDepth, gate1 }: Dimensions): number =>
  buttReturn * constantsBetween(catchDepth, gate1)

/** The same of the training machine. */
export const lowEnoughTime = lowEnoughTimeOf(dimensions)

/** How early the sweep may be, in needles, for a sound machine still to select, at a carriage speed in mm/s. */
export const earlyWindow = (speed: number, of: Dimensions = dimensions): number =>
  Math.min(heldWindow(speed, of) + travelIn(of, lowEnoughTimeOf(of), speed), takenWithin(of) + leadOf(of))

/** Time in ms in which a strip let go at its full shift falls below the catches' reach. */
export const releaseTime = (constant: number): number =>
  constant * constantsBetween(fullShift(dimensions) + preload, reach + preload)

/**
 * Carriage speed in mm/s above which a strip with this time constant (ms) also catches the needle eight further on, or
 * so many times eight. The simple form takes the strip as let go at the end of the wedge's flat.
 */
export const ghostSpeed = (constant: number, times = 1): number =>
  speedOver(dimensions, times * dimensions.strips - lead - sweepFlat, releaseTime(constant))

/** The same, with the strip leaving its rocker where the push falls faster than the spring follows. */
export const ghostSpeedExact = (constant: number): number => {
  let slow = 0.001
  let fast = 1e7
  for (let n = 0; n < 100; n++) {
    const middle = Math.sqrt(slow * fast)
    const left = shiftEightOn(dimensions, sweepThrow, lost, travelIn(dimensions, constant, middle))
    if (left >= reach) fast = middle
    else slow = middle
  }
  return fast
}

/** How many time constants a sound butt needs to spring up from the presser's dip, to the right, to the first gate's edge. */
const constantsToGate = ({ presserRight, gate1 }: Dimensions): number => constantsBetween(presserRight, gate1)

/** Carriage speed in mm/s above which a free butt with this time constant (ms) is missed by the first gate. */
export const missedSpeed = (buttReturn: number): number =>
  speedOver(dimensions, dimensions.gateLag, buttReturn * constantsToGate(dimensions))

/** The longest time constant, in ms, of a free butt that the first gate still meets at a carriage speed in mm/s. */
export const longestButtReturn = (speed: number, of: Dimensions = dimensions): number =>
  timeOver(of, of.gateLag, speed) / constantsToGate(of)
