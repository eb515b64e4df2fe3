import { allColumns, toColumn } from '../../mechanism/indices.ts'
import { columnBit, type RowHoles, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { firstValid } from '../seeded-random.ts'
import type { Maker } from '../question.ts'
import { ownRow, rowPicture } from '../setup.ts'
import { numberQuestion } from './number-question.ts'

const { columns } = dimensions

/** The longest run of columns with or without a hole: along one card's width, or round into the next repeat. */
const longestRun = (row: RowHoles, hole: boolean, round: boolean): number => {
  let longest = 0
  let run = 0
  for (let n = 0; n < columns * (round ? 2 : 1); n++) {
    run = hasHole(row, toColumn((n % columns) + 1)) === hole ? run + 1 : 0
    longest = Math.max(longest, run)
  }
  return Math.min(columns, longest)
}

/** How long is the longest float of a row? */
export const floatAsked: Maker = (kit) =>
  firstValid(() => {
    const { random } = kit
    const row = allColumns.reduce(
      (bits, column) => bits | (random.whole(0, 2) === 0 ? columnBit(column) : 0),
      0,
    )
    const value = longestRun(row, false, true)
    if (value < 4 || value > 12) return null
    const setup = { card: ownRow(row) }
    return numberQuestion(kit, {
      prompt: `The carriage is set for two yarns: the second yarn knits at the selected needles and floats behind the plain ones. The row repeats all along the bed. How many plain needles does its longest float pass?`,
      setup,
      value,
      pictures: [rowPicture([row], 1)],
      slips: [
        [
          longestRun(row, false, false),
          `After column ${columns} comes column 1 again, so a float may run on from one repeat into the next.`,
        ],
        [
          longestRun(row, true, true),
          'That is the longest run of holes, behind which the first yarn floats.',
        ],
        [value + 1, 'Count the plain needles between the two stitches, not the steps from stitch to stitch.'],
      ],
      how: `look for the longest run of columns without a hole, also from column ${columns} on to column 1.`,
      because: 'so many columns in a row have no hole, and the second yarn has nothing to knit there.',
      show: { ...setup, at: kit.columnOne + columns },
    })
  })
