import { type Dimensions, dimensions as training } from './dimensions.ts'
import { outOfPush } from './rocker.ts'
import { leadOf, sweepEnd, sweepWindow, windowOfShare } from './sweep.ts'
import { constantsBetween, decay } from './travel.ts'

const { strips } = training

/**
 * How a strip comes back after one push of a rocker. Distances are in needles of travel past the middle of the sweep,
 * shifts in mm.
 */
export interface Release {
  /** Push in mm on the flat of the sweep; 0 where the rocker does not pass it on. */
  readonly push: number
  /** Lost motion of the rocker at this push, in mm. */
  readonly lost: number
  /** Where the strip leaves its rocker because the push falls faster than the spring follows; Infinity for nowhere. */
  readonly leavesAt: number
  /** The strip's shift there; 0 where the spring follows all the way. */
  readonly leavesWith: number
  /** Where the strip is back at rest, nothing else having pushed it. */
  readonly restsAt: number
  /** Where the strip comes to the shift at which a catch holds what it has; Infinity for a push too weak for it. */
  readonly holdsFrom: number
  /** Where it falls below that shift again. */
  readonly holdsTo: number
}

/**
 * Where a strip leaves its rocker, in needles past the middle of the sweep; Infinity where the spring always follows.
 * Solves output'(v) = -(output + preload) / constant on the ramp behind the flat: with
 * angle = pi (v - sweepFlat) / sweepRamp that is
 * (pi constant / sweepRamp) sin(angle) - cos(angle) = 1 + (preload - lost) / amplitude.
 */
export const leavingPoint = (
  { sweepFlat, sweepRamp, preload }: Dimensions,
  amplitude: number,
  lost: number,
  constant: number,
): number => {
  const steepness = (Math.PI * constant) / sweepRamp
  const share = (1 + (preload - lost) / amplitude) / Math.hypot(steepness, 1)
  if (!(amplitude > 0) || share >= 1) return Infinity
  const angle = Math.atan2(1, steepness) + Math.asin(Math.max(-1, share))
  return sweepFlat + (Math.max(0, angle) * sweepRamp) / Math.PI
}

/**
 * Shift in mm that is left after a strip was let go at `shift`. `distance` and the time `constant` of its return are
 * both in needles of travel, or both in ms.
 */
export const returning = (
  { preload }: Dimensions,
  shift: number,
  distance: number,
  constant: number,
): number => Math.max(0, (shift + preload) * decay(distance, constant) - preload)

/** After how many time constants of its return a strip is home that was let go at a shift in mm. */
export const constantsHome = ({ preload }: Dimensions, shift: number): number =>
  constantsBetween(shift + preload, preload)

/** How far a strip that was let go at `shift` comes before a catch lets go, in the unit of `constant`; never below 0. */
export const holdingOn = ({ letGo, preload }: Dimensions, shift: number, constant: number): number =>
  shift < letGo ? 0 : constant * constantsBetween(shift + preload, letGo + preload)

/** A push that never moves the strip, by a rocker with this lost motion. */
export const noRelease = (lost: number): Release => ({
  push: 0,
  lost,
  leavesAt: Infinity,
  leavesWith: 0,
  restsAt: -Infinity,
  holdsFrom: Infinity,
  holdsTo: -Infinity,
})

/**
 * How a strip comes back after a push of so many mm at most by a rocker with this lost motion; `constant` is the time
 * constant of the strip's return, in needles of travel.
 */
export const releaseOf = (dimensions: Dimensions, push: number, lost: number, constant: number): Release => {
  const { ratio, letGo } = dimensions
  const full = outOfPush(dimensions, push, lost)
  if (full === 0) return noRelease(lost)
  const leavesAt = leavingPoint(dimensions, (ratio * push) / 2, lost, constant)
  const end = sweepEnd(dimensions)
  const leavesWith =
    leavesAt < end ? outOfPush(dimensions, push * sweepWindow(dimensions, leavesAt), lost) : 0
  const restsAt = leavesWith > 0 ? leavesAt + constant * constantsHome(dimensions, leavesWith) : end
  if (full < letGo)
    return { push, lost, leavesAt, leavesWith, restsAt, holdsFrom: Infinity, holdsTo: -Infinity }
  const follows = windowOfShare(dimensions, (letGo + lost) / (ratio * push))
  const holdsTo = leavesAt < follows ? leavesAt + holdingOn(dimensions, leavesWith, constant) : follows
  return { push, lost, leavesAt, leavesWith, restsAt, holdsFrom: -follows, holdsTo }
}

/**
 * Shift in mm that is left of a strip pushed by `push` mm at most, with this lost motion, when the presser lets go of
 * the needle eight further on. `early` is how early the belt has the sweep, in needles of travel; `constant` is the
 * strip's time constant in needles of travel.
 */
export const shiftEightOn = (
  dimensions: Dimensions,
  push: number,
  lost: number,
  constant: number,
  early = 0,
): number => {
  const { leavesAt, leavesWith } = releaseOf(dimensions, push, lost, constant)
  if (leavesWith === 0) return 0
  return returning(dimensions, leavesWith, strips - leadOf(dimensions) + early - leavesAt, constant)
}

/** Shift in mm of a strip `past` needles past the middle of one push of a sweep, nothing else having pushed it. */
export const shiftAfter = (
  dimensions: Dimensions,
  release: Release,
  past: number,
  constant: number,
): number => {
  const pushed = outOfPush(dimensions, release.push * sweepWindow(dimensions, past), release.lost)
  return past < release.leavesAt || release.leavesWith === 0
    ? pushed
    : Math.max(pushed, returning(dimensions, release.leavesWith, past - release.leavesAt, constant))
}
