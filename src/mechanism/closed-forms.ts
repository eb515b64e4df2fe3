import { dimensions } from './dimensions.ts'
import { neededPush, fullShift } from './rocker.ts'
import { shiftEightOn } from './strip.ts'
import { windowOfShare } from './sweep.ts'
import { constantsBetween, speedOver, timeOver, travelIn } from './travel.ts'

/** Largest belt timing error, in needles, at which the sound machine still selects. */
export const timingWindow = windowOfShare(neededPush / dimensions.sweepThrow)

/** Time in ms in which a strip let go at its full shift falls below the catches' reach. */
export const releaseTime = (stripReturn: number): number =>
  stripReturn * constantsBetween(fullShift + dimensions.preload, dimensions.reach + dimensions.preload)

/**
 * Carriage speed in mm/s above which a strip with this time constant (ms) also catches the needle eight further on.
 * The simple form takes the strip as let go at its peak, at the pin's middle.
 */
export const ghostSpeed = (stripReturn: number): number =>
  speedOver(dimensions.strips, releaseTime(stripReturn))

/** The same, with the strip leaving its rocker where the push falls faster than the spring follows. */
export const ghostSpeedExact = (stripReturn: number): number => {
  let slow = 0.001
  let fast = 1e7
  for (let n = 0; n < 100; n++) {
    const middle = Math.sqrt(slow * fast)
    const left = shiftEightOn(dimensions.sweepThrow, dimensions.lost, travelIn(stripReturn, middle))
    if (left >= dimensions.reach) fast = middle
    else slow = middle
  }
  return fast
}

/** How many time constants a sound butt needs to spring up from the presser's dip to the first gate's edge. */
const constantsToGate = constantsBetween(dimensions.presser, dimensions.gate1)

/** Carriage speed in mm/s above which a free butt with this time constant (ms) is missed by the first gate. */
export const missedSpeed = (buttReturn: number): number =>
  speedOver(dimensions.gateLag, buttReturn * constantsToGate)

/** The longest time constant, in ms, of a free butt that the first gate still meets at a carriage speed in mm/s. */
export const longestButtReturn = (speed: number): number =>
  timeOver(dimensions.gateLag, speed) / constantsToGate
