import { canonicalPlace, needleIndex, needleName, usualPlace } from '../mechanism/bed.ts'
import type { Needle } from '../mechanism/indices.ts'
import { oneValue, type Others, type Row } from './codec.ts'
import { quote } from './troubles.ts'

/**
 * The row of a link's needle of column 1, such as R1 or L12, on a bed of so many needles. Any needle of column 1 will do:
 * what is read and written is the one among R1 to R24.
 */
export const cardPlaceRow = <Whole>(needlesOf: (others: Others<Whole>) => number): Row<Needle, Whole> =>
  oneValue('first', {
    usual: () => usualPlace.columnOne,
    parse(text, { usual, others, troubles }) {
      const columnOne = needleIndex(text, needlesOf(others))
      if (columnOne !== null) return canonicalPlace({ columnOne }).columnOne
      troubles.leftOut(
        'first',
        text.trim() === ''
          ? 'The link does not name the needle of column 1.'
          : `${quote(text)} is no needle for column 1 such as R1 or L12.`,
        `; ${needleName(usual)} is used.`,
      )
      return usual
    },
    write: (columnOne) => needleName(canonicalPlace({ columnOne }).columnOne),
  })
