import type { ByHand } from './by-hand.ts'
import { stickyChances } from './chances.ts'
import { sumOfChoices } from './choices.ts'
import type { FollowerValues } from './follower-values.ts'

/** How likely the notes of a column's needles are, by what the column does. */
export interface ColumnSums {
  /** Its pushes come as the card asks, in no look, in every look that pushes. */
  readonly follows: number
  readonly never: number
  /** Never, for a pin that is stuck low or a dead rocker. */
  readonly dead: number
  readonly always: number
  /** By stickiness, weighed. */
  readonly sticky: number
  readonly stickyBy: readonly number[]
  /** By look's row that a hole may be wrong in. */
  readonly holes: readonly number[]
  /** Pushes in each look with a chance of one half. */
  readonly other: number
}

/**
 * The sums of a column, by the values of its needles. `asked` are the looks in which a sound pin pushes, `pushes` those in which a pin that
 * is up does; `rows` has, by row of a card that was under the pins, the looks in which it was.
 */
export const columnSumsOf = (
  values: FollowerValues,
  asked: number,
  pushes: number,
  rows: readonly number[],
  isRough: boolean,
  byHand: ByHand['columns'][number],
): ColumnSums => {
  const half = isRough ? sumOfChoices(values, asked, 0.5) : 0
  const stickyBy = stickyChances.map(
    ({ share }) => byHand.sticky * (isRough ? half : sumOfChoices(values, asked, 1 - share)),
  )
  const never = values.of(0)
  return {
    follows: byHand.right * values.of(asked),
    never: byHand.right * never,
    dead: byHand.dead * never,
    always: byHand.high * values.of(pushes),
    stickyBy,
    sticky: stickyChances.reduce((sum, { chance }, n) => sum + chance * stickyBy[n]!, 0),
    holes: isRough ? [] : rows.map((looks) => byHand.right * values.of(asked ^ (looks & pushes))),
    other: isRough ? 0 : byHand.right * sumOfChoices(values, pushes, 0.5),
  }
}
