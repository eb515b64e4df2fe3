import type { Bed } from '../mechanism/bed.ts'
import { modulo } from '../mechanism/bed.ts'
import { lateWindowOf } from '../mechanism/closed-forms.ts'
import { type Dimensions, dimensions as training } from '../mechanism/dimensions.ts'
import { leadOf } from '../mechanism/sweep.ts'
import type { Followers } from './follower-values.ts'
import { Memo } from './memo.ts'

const { columns, strips, turnMark } = training

/** The columns of a strip, by index from 0: three of them. */
export const columnsPerStrip = columns / strips

/** A number for passes to the right, and one for those to the left. */
export interface EachWay {
  readonly right: number
  readonly left: number
}

/**
 * How far outside the needles in use a sweep so early, at the start of a pass, still pushes a pin fully: all in needles, as
 * what follows.
 */
const reachOutside = (dimensions: Dimensions, early: number): number =>
  Math.floor(turnMark + leadOf(dimensions) + dimensions.sweepFlat - early)

/** How far behind a needle the presser is by when a sweep so early has pushed that needle's pin; 0 where it is in time. */
const missedBy = (dimensions: Dimensions, early: number): number =>
  Math.max(0, Math.ceil(-lateWindowOf(dimensions) - early))

/** Which needles follow which column, and when the sweep comes by first. */
export interface Layout {
  readonly bed: Bed
  /** How far outside the needles in use a pass begins to push pins. */
  readonly outside: EachWay
  /** By column index from 0: the needles in use that follow it, from the left, where nothing is forced on them. */
  readonly followers: readonly Followers[]
  /** By column index: from which needle on a pass to the right has pushed the column's pin, and to the left. */
  readonly metFrom: readonly EachWay[]
}

const known = new Memo<Layout>(50)

/**
 * The layout of the needles in use, with the needle of column 1, where the pattern is moved by `offset` needles and the
 * sweep is so early in passes each way.
 */
export const layoutOf = (
  dimensions: Dimensions,
  bed: Bed,
  columnOne: number,
  offset: number,
  early: EachWay,
): Layout => {
  const outside = {
    right: reachOutside(dimensions, early.right),
    left: reachOutside(dimensions, early.left),
  }
  const missed = { right: missedBy(dimensions, early.right), left: missedBy(dimensions, early.left) }
  const key = [bed.first, bed.last, columnOne, offset, ...Object.values(outside), ...Object.values(missed)]
  return known.of(key.join(' '), () => layoutIn(bed, columnOne, offset, outside, missed))
}

const everyGroup = new Memo<readonly Followers[]>(20)

/** The needles in use that are so many columns apart, by the remainder of their numbers: the same for every layout of a bed. */
const groupsOf = ({ first, last }: Bed): readonly Followers[] =>
  everyGroup.of(`${first} ${last}`, () => {
    const groups: number[][] = Array.from({ length: columns }, () => [])
    for (let needle: number = first; needle <= last; needle++) groups[modulo(needle, columns)]!.push(needle)
    return groups.map((needles) => ({ needles, forced: new Int32Array(needles.length) }))
  })

const layoutIn = (bed: Bed, columnOne: number, offset: number, outside: EachWay, missed: EachWay): Layout => {
  const columnOf = (needle: number): number => modulo(needle + offset - columnOne, columns)
  const groups = groupsOf(bed)
  const followers = groups.map((_, column) => groups[modulo(column + columnOne - offset, columns)]!)
  const metFrom = followers.map((_, column) => {
    const start = bed.first - outside.right
    const end = bed.last + outside.left
    return {
      right: start + modulo(column - columnOf(start), columns) + missed.right,
      left: end - modulo(columnOf(end) - column, columns) - missed.left,
    }
  })
  return { bed, outside, followers, metFrom }
}

/** Whether a push so many of a strip's needles before a needle falls into its pass, going right and going left. */
export const hasBefore = (
  { bed, outside }: Layout,
  needle: number,
  count: number,
): { readonly right: boolean; readonly left: boolean } => ({
  right: needle - count * strips >= bed.first - outside.right,
  left: needle + count * strips <= bed.last + outside.left,
})
