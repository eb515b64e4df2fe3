import { dimensions } from './dimensions.ts'
import { neededPush } from './rocker.ts'
import { leavingPoint, returning } from './strip.ts'
import { sweepWindow } from './sweep.ts'

/** Largest belt timing error, in needles, at which the sound machine still selects. */
export const timingWindow =
  (dimensions.sweepHalf / Math.PI) * Math.acos((2 * neededPush) / dimensions.sweepThrow - 1)

/** Full shift of a strip in mm. */
export const fullShift = dimensions.ratio * dimensions.sweepThrow - dimensions.lost

/** Time in ms in which a strip let go at its full shift falls below the catches' reach. */
export const releaseTime = (stripReturn: number): number =>
  stripReturn * Math.log((fullShift + dimensions.preload) / (dimensions.reach + dimensions.preload))

/**
 * Carriage speed in mm/s above which a strip with this time constant (ms) also catches the needle eight further on.
 * The simple form takes the strip as let go at its peak, at the pin's middle.
 */
export const ghostSpeed = (stripReturn: number): number =>
  (1000 * dimensions.strips * dimensions.pitch) / releaseTime(stripReturn)

/** The same, with the strip leaving its rocker where the push falls faster than the spring follows. */
export const ghostSpeedExact = (stripReturn: number): number => {
  const shiftEightOn = (speed: number): number => {
    const decay = (stripReturn * speed) / (1000 * dimensions.pitch)
    const leavesAt = leavingPoint((dimensions.ratio * dimensions.sweepThrow) / 2, dimensions.lost, decay)
    if (leavesAt >= dimensions.sweepHalf) return 0
    const shift = dimensions.ratio * dimensions.sweepThrow * sweepWindow(leavesAt) - dimensions.lost
    return returning(shift, dimensions.strips - leavesAt, decay)
  }
  let slow = 0.001
  let fast = 1e7
  for (let n = 0; n < 100; n++) {
    const middle = Math.sqrt(slow * fast)
    if (shiftEightOn(middle) >= dimensions.reach) fast = middle
    else slow = middle
  }
  return fast
}

/** Carriage speed in mm/s above which a free butt with this time constant (ms) is missed by the first gate. */
export const missedSpeed = (buttReturn: number): number =>
  (1000 * dimensions.gateLag * dimensions.pitch) /
  (buttReturn * Math.log(dimensions.presser / dimensions.gate1))
