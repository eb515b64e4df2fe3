import { dimensions } from '../../mechanism/dimensions.ts'
import { sweepEnd, sweepWindow } from '../../mechanism/sweep.ts'

const { pitch, sweepThrow, sweepFlat } = dimensions
const end = sweepEnd(dimensions)

/** How far a pin's front leg goes to the left in its slanted slot for each step to the front: this drawing's choice. */
const slant = 1.5

/** How far to the front a leg comes that is pushed so far to the left; both in mm. */
export const forwardOf = (push: number): number => push / slant

/** A place on or at the wedge seen from above, in mm from its middle: to the right, and to the front. */
interface WedgePoint {
  readonly right: number
  readonly front: number
}

/** Where a leg stands beside the wedge with the wedge's middle `past` needles to the right of it. */
const legBeside = (past: number): WedgePoint => {
  const push = sweepThrow * sweepWindow(dimensions, past)
  return { right: -past * pitch - push, front: forwardOf(push) }
}

const steps = 48

/**
 * The wedge's flank from its left end to its right: up its ramp, along its flat, down the other ramp. `radius` is half a
 * leg's thickness, in mm: the flank stays that far behind the legs' middles. The same for both ways; it is sheared, since
 * the slots slant.
 */
export const wedgeFlank = (radius: number): WedgePoint[] =>
  Array.from({ length: steps + 1 }, (_, n) => {
    const past = end * (1 - (2 * n) / steps)
    const [before, here, after] = [past + 0.01, past, past - 0.01].map(legBeside)
    const [right, front] = [after!.right - before!.right, after!.front - before!.front]
    const length = Math.hypot(right, front)
    return {
      right: here!.right + (front / length) * radius,
      front: here!.front - (right / length) * radius,
    }
  })

/** Where the flat begins and ends seen from the front, and the wedge's ends, in mm to the right of its middle. */
export const wedgeEnds = {
  left: legBeside(end).right,
  flatLeft: legBeside(sweepFlat).right,
  flatRight: legBeside(-sweepFlat).right,
  right: legBeside(-end).right,
} as const
