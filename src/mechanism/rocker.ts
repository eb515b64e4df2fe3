import type { Condition } from './condition.ts'
import type { Dimensions } from './dimensions.ts'
import { type Column, markOfColumn, measureOfColumn } from './indices.ts'

/** What a rocker with this lost motion gives to its strip for a pin pushed aside by `push`; all in mm. */
export const outOfPush = ({ ratio }: Dimensions, push: number, lost: number): number =>
  Math.max(0, ratio * push - lost)

/**
 * What the rocker of a column gives to its strip for a pin pushed aside by `push` mm. `lost` is its lost motion in mm
 * at this push, for loose pivots more than the rocker's own.
 */
export const rockerOut = (
  condition: Condition,
  column: Column,
  push: number,
  lost: number = measureOfColumn(condition.lost, column),
): number =>
  markOfColumn(condition.rockerDead, column) === 1 ? 0 : outOfPush(condition.dimensions, push, lost)

/** The push in mm with which a rocker of this lost motion brings its strip to a shift of `reach` mm. */
export const pushForReach = ({ ratio }: Dimensions, reach: number, lost: number): number =>
  (reach + lost) / ratio

/** The push in mm that a sound rocker needs to bring its strip to the catches' reach. */
export const neededPush = (dimensions: Dimensions): number =>
  pushForReach(dimensions, dimensions.reach, dimensions.lost)

/** Full shift of a strip in mm, by a sound rocker. */
export const fullShift = (dimensions: Dimensions): number =>
  outOfPush(dimensions, dimensions.sweepThrow, dimensions.lost)
