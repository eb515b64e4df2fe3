import { canonicalPlace, needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Needle, toNeedle } from '../mechanism/indices.ts'
import { listed } from './lists.ts'

/** What it means that a needle is of column 1, with the others of column 1 nearest to the middle of the bed. */
export const cardPlaceWords = (columnOne: Needle): string => {
  const { columns } = dimensions
  const middle = canonicalPlace({ columnOne }).columnOne
  const nearby = [middle - columns, middle, middle + columns].map(toNeedle)
  return `Column 1 is at ${needleName(columnOne)}, and at every twenty-fourth needle from there: ${listed(nearby.map(needleName))} among them.`
}
