import { type CardPlace, needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Needle, toNeedle } from '../mechanism/indices.ts'
import type { Kit } from './question.ts'

/** Adjacent needles: the first, and how many there are. */
export interface NeedleRange {
  readonly first: Needle
  readonly count: number
}

/** A range's needles, from the left. */
export const needlesIn = ({ first, count }: NeedleRange): Needle[] =>
  Array.from({ length: count }, (_, n) => toNeedle(first + n))

/** The farthest that ranges of questions are from the middle of the bed, in needles. */
const reach = 96

/** A random range of `count` needles whose first is of column 1, or a multiple of `step` needles from one that is. */
export const someRange = (
  { random, columnOne }: Pick<Kit, 'random' | 'columnOne'>,
  count: number,
  step: number = dimensions.columns,
): NeedleRange => {
  const farthest = Math.floor((reach - count) / step)
  const first = columnOne + step * random.whole(-Math.floor(reach / step), farthest)
  // With column 1 far from the middle the last repeat of the card may leave the bed.
  const most = dimensions.needles - count
  return { first: toNeedle(first > most ? first - dimensions.columns : first), count }
}

/** Where column 1 is, as a question says it: R1 is column 1. */
export const columnOneWords = ({ columnOne }: CardPlace): string => `${needleName(columnOne)} is column 1`

/** A range by its first and last needle: R1 to R24. */
export const rangeNames = ({ first, count }: NeedleRange): string =>
  `${needleName(first)} to ${needleName(toNeedle(first + count - 1))}`
