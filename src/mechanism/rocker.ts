import type { Condition } from './condition.ts'
import { dimensions } from './dimensions.ts'

/** What the rocker of `column` (1 to 24) gives to its strip for a pin pushed aside by `push` mm. */
export const rockerOut = (condition: Condition, column: number, push: number): number =>
  condition.rockerDead[column - 1]
    ? 0
    : Math.max(0, dimensions.ratio * push - (condition.lost[column - 1] ?? 0))

/** The push in mm that a sound rocker needs to bring its strip to the catches' reach. */
export const neededPush = (dimensions.reach + dimensions.lost) / dimensions.ratio
