import type { Outcome } from '../mechanism/gate.ts'

/** Outcomes as small numbers, so that beds are cheap to keep and to compare. */
export const codes = { selected: 0, plain: 1, unmoved: 2 } as const satisfies Record<Outcome, number>

const outcomes = ['selected', 'plain', 'unmoved'] as const satisfies readonly Outcome[]

/** The outcome of a code of `codes`. Throws a `RangeError` on any other number. */
export const outcomeOfCode = (code: number): Outcome => {
  const outcome = outcomes[code]
  if (outcome === undefined) throw new RangeError(`${code} is not the code of an outcome`)
  return outcome
}

/**
 * One needle that comes out otherwise than on a sound machine, packed into one small integer: its place from the left, from 0,
 * and the code of its outcome in the two lowest bits.
 */
export const packChange = (slot: number, code: number): number => slot * 4 + code

/** The needle of a packed change, by its place from the left, from 0. */
export const changedSlot = (packed: number): number => packed >> 2

/** The code of a packed change's outcome. */
export const changedCode = (packed: number): number => packed & 3
