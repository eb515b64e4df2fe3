import type { Way } from './bed.ts'
import type { Condition } from './condition.ts'
import type { Dimensions } from './dimensions.ts'
import { catchDepthOf, dipOf } from './hold.ts'
import { type Needle, markOfNeedle, measureOfNeedle, slotOf } from './indices.ts'
import { normalCdf } from './normal.ts'
import { normalDraw } from './random.ts'
import { decay, timeOver } from './travel.ts'
import { retainerSpread } from './wear.ts'

/** The letters by which links, traces and files write outcomes. */
export const outcomeLetters = { selected: 's', plain: 'p', unmoved: 'u' } as const

/** What may become of a needle on its way through the carriage. */
export type Outcome = keyof typeof outcomeLetters

/** Time constant in ms of an ordinary free butt: none of a stiff needle, and with a worn retainer bar the median. */
export const medianButtReturn = ({ retainer, dimensions }: Condition): number =>
  retainer === 0 ? dimensions.buttReturn : retainer

/** Time constant in ms with which the butt of a needle springs up in a pass. */
export const buttReturnOf = (condition: Condition, needle: Needle, pass: number): number => {
  const stiff = measureOfNeedle(condition.needleStiff, needle)
  if (stiff > 0) return stiff
  const median = medianButtReturn(condition)
  if (condition.retainer === 0) return median
  return (
    median *
    Math.exp(
      retainerSpread *
        normalDraw(condition.seed, 'retainer', slotOf(needle, condition.dimensions.needles), pass),
    )
  )
}

/** Chance that a worn retainer bar of this median time constant, in ms, gives a butt a longer one than `longest`. */
export const chanceOfSlower = (median: number, longest: number): number =>
  normalCdf(Math.log(median / longest) / retainerSpread)

/** Time in ms that `distance` needles of travel take. */
export const travelTime = (condition: Condition, distance: number): number =>
  timeOver(condition.dimensions, distance, condition.speed)

/** Height in mm of a free butt, above where it rests, `time` ms after the presser let it go `dip` mm down. */
export const springing = (dip: number, time: number, buttReturn: number): number =>
  -dip * decay(time, buttReturn)

/** Height in mm of a free butt, above the rest level, `time` ms after the presser let it go. */
export const freeHeight = (
  condition: Condition,
  needle: Needle,
  way: Way,
  time: number,
  buttReturn: number,
): number =>
  measureOfNeedle(condition.buttError, needle) + springing(dipOf(condition, needle, way), time, buttReturn)

/** Height in mm at which a catch keeps the butt of a needle. */
export const heldHeight = (condition: Condition, needle: Needle): number =>
  measureOfNeedle(condition.buttError, needle) - catchDepthOf(condition, needle)

/** Height in mm, above the rest level, at which a free butt comes to the first gate in a pass. */
export const freeHeightAtGate = (condition: Condition, needle: Needle, way: Way, pass: number): number =>
  freeHeight(
    condition,
    needle,
    way,
    travelTime(condition, condition.dimensions.gateLag),
    buttReturnOf(condition, needle, pass),
  )

/** Lower edges of the two gates, in mm below the rest level. */
export type Gates = Pick<Dimensions, 'gate1' | 'gate2'>

/** The gates of a machine in this condition. */
export const gatesOf = ({ gate1, dimensions }: Condition): Gates => ({ gate1, gate2: dimensions.gate2 })

/** Where a butt at this height, in mm above the rest level, is sent by the two gates. */
export const sortByHeight = (height: number, { gate1, gate2 }: Gates): Outcome => {
  if (height > -gate1) return 'plain'
  return height > -gate2 ? 'selected' : 'unmoved'
}

/**
 * Height in mm, above the rest level, of a butt that its catch let go `time` ms ago: it springs up from where the catch
 * kept it.
 */
export const letGoHeight = (condition: Condition, needle: Needle, time: number, buttReturn: number): number =>
  measureOfNeedle(condition.buttError, needle) + springing(catchDepthOf(condition, needle), time, buttReturn)

/**
 * Height in mm, above the rest level, at which a butt comes to the first gate in a pass. `keptFor` is how far the
 * carriage travels, in needles from the presser's release, until its catch lets it go: 0 where it never took it, and
 * Infinity where it keeps it up to the gate.
 */
export const heightAtGate = (
  condition: Condition,
  needle: Needle,
  way: Way,
  pass: number,
  keptFor: number,
): number => {
  if (keptFor === 0) return freeHeightAtGate(condition, needle, way, pass)
  const { gateLag } = condition.dimensions
  if (keptFor >= gateLag) return heldHeight(condition, needle)
  const time = travelTime(condition, gateLag - keptFor)
  return letGoHeight(condition, needle, time, buttReturnOf(condition, needle, pass))
}

/** What becomes of a needle in a pass, by how far its catch keeps its butt, as in `heightAtGate`. */
export const outcomeOf = (
  condition: Condition,
  needle: Needle,
  way: Way,
  pass: number,
  keptFor: number,
): Outcome => {
  if (markOfNeedle(condition.needleGone, needle) === 1) return 'unmoved'
  if (condition.carriagePlain) return 'plain'
  return sortByHeight(heightAtGate(condition, needle, way, pass, keptFor), gatesOf(condition))
}
