import { needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Needle, toNeedle } from '../mechanism/indices.ts'
import type { Random } from './seeded-random.ts'

/** Adjacent needles: the index of the first, 0 to 199, and how many there are. */
export interface NeedleRange {
  readonly first: Needle
  readonly count: number
}

/** The indexes of a range's needles, from the left. */
export const needlesIn = ({ first, count }: NeedleRange): number[] =>
  Array.from({ length: count }, (_, n) => first + n)

/** The farthest that ranges of questions are from the middle of the bed, in needles. */
const reach = 96

/** A random range of `count` needles whose first is of column 1, or a multiple of `step` needles from the middle. */
export const someRange = (random: Random, count: number, step: number = dimensions.columns): NeedleRange => {
  const farthest = Math.floor((reach - count) / step)
  return {
    first: toNeedle(dimensions.needles / 2 + step * random.whole(-Math.floor(reach / step), farthest)),
    count,
  }
}

/** A range by its first and last needle: R1 to R24. */
export const rangeNames = ({ first, count }: NeedleRange): string =>
  `${needleName(first)} to ${needleName(toNeedle(first + count - 1))}`
