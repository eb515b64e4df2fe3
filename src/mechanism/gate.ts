import type { Way } from './bed.ts'
import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'
import { catchDepthOf, dipOf } from './hold.ts'
import { normalDraw } from './random.ts'
import { retainerSpread } from './wear.ts'

/** What may become of a needle on its way through the carriage. */
const outcomes = ['selected', 'plain', 'unmoved'] as const
export type Outcome = (typeof outcomes)[number]

/** Time constant in ms with which the butt of needle `index` springs up in a pass. */
export const buttReturnOf = (condition: Condition, index: number, pass: number): number => {
  const stiff = condition.needleStiff[index] ?? 0
  if (stiff > 0) return stiff
  if (condition.retainer === 0) return dimensions.buttReturn
  return condition.retainer * Math.exp(retainerSpread * normalDraw(condition.seed, 'retainer', index, pass))
}

/** Time in ms that `distance` needles of travel take. */
export const travelTime = (condition: Condition, distance: number): number =>
  (1000 * distance * dimensions.pitch) / condition.speed

/** Height in mm of a free butt, above the rest level, `time` ms after the presser let it go. */
export const freeHeight = (
  condition: Condition,
  index: number,
  way: Way,
  time: number,
  buttReturn: number,
): number => (condition.buttError[index] ?? 0) - dipOf(condition, index, way) * Math.exp(-time / buttReturn)

/** Height in mm at which a catch keeps the butt of needle `index`. */
export const heldHeight = (condition: Condition, index: number): number =>
  (condition.buttError[index] ?? 0) - catchDepthOf(condition, index)

/** Where a butt at this height, in mm above the rest level, is sent by the two gates. */
export const sortByHeight = (height: number, gate1: number): Outcome => {
  if (height > -gate1) return 'plain'
  return height > -dimensions.gate2 ? 'selected' : 'unmoved'
}
