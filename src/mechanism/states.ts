import type { CardRow, Column } from './indices.ts'

/** Whether a pin is stuck down, free to rise, or stuck up. */
export const pinStates = { free: 0, low: 1, high: 2 } as const

/** Whether a strip is free to move, seized at rest, or stuck shifted. */
export const stripStates = { free: 0, seized: 1, over: 2 } as const

/** Key of a card's hole in `Condition.holes`. */
export const holeKey = (row: CardRow, column: Column): number => row * 32 + column
