import type { Dimensions } from './dimensions.ts'

/** Time in ms that `distance` needles of travel take at `speed` mm/s. */
export const timeOver = ({ pitch }: Dimensions, distance: number, speed: number): number =>
  (1000 * distance * pitch) / speed

/** Speed in mm/s at which `distance` needles of travel take `time` ms. */
export const speedOver = ({ pitch }: Dimensions, distance: number, time: number): number =>
  (1000 * distance * pitch) / time

/** Travel in needles during `time` ms at `speed` mm/s. */
export const travelIn = ({ pitch }: Dimensions, time: number, speed: number): number =>
  (time * speed) / (1000 * pitch)

/** Share that is left, `since` a spring was let go, of its distance from rest; `constant` is in the same unit. */
export const decay = (since: number, constant: number): number => Math.exp(-since / constant)

/** After how many time constants a spring has come from one distance from where it pulls to another. */
export const constantsBetween = (from: number, to: number): number => Math.log(from / to)
