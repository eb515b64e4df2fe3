import type { Vector } from './engine/vector.ts'

/** A dimension in a picture: between which points of the machine, how far aside its line is, and what it is. */
export interface Measure {
  readonly from: Vector
  readonly to: Vector
  readonly aside: Vector
  /** What is measured, where the picture does not say it, and its length in the model's mm. */
  readonly words: string
  /** Where the words are: beside the line, or beyond one of its ends; beside it where it is left out. */
  readonly lettered?: 'from' | 'to' | undefined
}

/** A level from which things are measured, as a line across the picture, with its name. */
export interface Datum {
  readonly from: Vector
  readonly to: Vector
  readonly words: string
}

/** What is less than this, in mm, has no dimension. */
export const leastMeasured = 0.05
