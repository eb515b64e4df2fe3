import type { Bed } from '../mechanism/bed.ts'
import { modulo } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { lead } from '../mechanism/sweep.ts'
import { Memo } from './memo.ts'

const { columns, strips, turnMark, sweepFlat } = dimensions

/** The columns of a strip, by index from 0: three of them. */
export const columnsPerStrip = columns / strips

/** How far outside the needles in use the sweep, at the start of a pass, still pushes a pin fully, in needles. */
const reachOutside = Math.floor(turnMark + lead + sweepFlat)

/** Which needles follow which column, and when the sweep comes by first. */
export interface Layout {
  readonly bed: Bed
  /** By column index from 0: the needles in use that follow it, from the left. */
  readonly followers: readonly (readonly number[])[]
  /** By column index: from which needle on a pass to the right has met the column's pin, and to the left. */
  readonly metFrom: readonly { readonly right: number; readonly left: number }[]
}

const known = new Memo<Layout>(50)

/** The layout of the needles in use, with the needle of column 1, where the pattern is moved by `offset` needles. */
export const layoutOf = (bed: Bed, columnOne: number, offset: number): Layout =>
  known.of(`${bed.first} ${bed.last} ${columnOne} ${offset}`, () => layoutIn(bed, columnOne, offset))

const layoutIn = (bed: Bed, columnOne: number, offset: number): Layout => {
  const columnOf = (needle: number): number => modulo(needle + offset - columnOne, columns)
  const followers: number[][] = Array.from({ length: columns }, () => [])
  for (let needle: number = bed.first; needle <= bed.last; needle++) followers[columnOf(needle)]!.push(needle)
  const metFrom = followers.map((_, column) => {
    const start = bed.first - reachOutside
    const end = bed.last + reachOutside
    return {
      right: start + modulo(column - columnOf(start), columns),
      left: end - modulo(columnOf(end) - column, columns),
    }
  })
  return { bed, followers, metFrom }
}

/** Whether a push two of a strip's needles before a needle falls into its pass, going right and going left. */
export const hasSecond = ({ bed }: Layout, needle: number): { right: boolean; left: boolean } => ({
  right: needle - 2 * strips >= bed.first - reachOutside,
  left: needle + 2 * strips <= bed.last + reachOutside,
})
