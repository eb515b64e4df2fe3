import type { ByHand } from './by-hand.ts'
import { columnChances, type Reader, wrongHole } from './chances.ts'
import { type ColumnSums, columnSumsOf, type Followers, followersValue } from './column-sums.ts'
import { columnsPerStrip, type Layout, rightLooks } from './layout.ts'
import type { NeedleSums } from './needle-sums.ts'
import type { WideBed } from './wide.ts'

/** Every set of a strip's three columns, as bits: those whose pins stay pushed over. */
export const overSets = Array.from({ length: 1 << columnsPerStrip }, (_, set) => set)

/** A bed in some state with the sums of its needles. */
export interface BedSums {
  readonly bed: WideBed
  readonly layout: Layout
  readonly needles: NeedleSums
  /** By row of a card that was under the pins: the looks in which it was. */
  readonly rows: readonly number[]
  readonly byHand: ByHand
  /** What `followersOf` has found before. */
  readonly followers: Map<number, Followers>
}

/** The columns of a strip, by index from 0; `strip` from 0. */
export const stripColumns = (strip: number): readonly [number, number, number] => [
  strip,
  strip + 8,
  strip + 16,
]

/** The needles of a column, with the looks in which the pins of `over` (bits of the strip's columns) keep them offered. */
export const followersOf = (sums: BedSums, column: number, over: number): Followers => {
  const key = over * 24 + column
  let found = sums.followers.get(key)
  if (!found) sums.followers.set(key, (found = followersIn(sums, column, over)))
  return found
}

const followersIn = ({ bed, layout }: BedSums, column: number, over: number): Followers => {
  const needles = layout.followers[column]!
  const forced = new Int32Array(needles.length)
  if (over === 0) return { needles, forced }
  const right = rightLooks(bed)
  for (const [n, other] of stripColumns(column % 8).entries()) {
    if ((over & (1 << n)) === 0) continue
    const met = layout.metFrom[other]!
    for (const [m, needle] of needles.entries()) {
      const looks = (needle >= met.right ? right : 0) | (needle <= met.left ? ~right : 0)
      forced[m]! |= looks & bed.pushed[other]!
    }
  }
  return { needles, forced }
}

/** By the strip's columns: the sums of one that may do anything, or the one number of one that stays pushed over. */
export type FastSums = readonly (ColumnSums | number)[]

/** How likely the notes of a strip's needles are where it follows its rockers, and the pins of `over` stay pushed over. */
export const fastSumsOf = (sums: BedSums, strip: number, over: number, isRough: boolean): FastSums =>
  stripColumns(strip).map((column, n) => {
    const followers = followersOf(sums, column, over)
    return over & (1 << n)
      ? sums.byHand.columns[column]!.over * followersValue(sums.needles, followers, 0)
      : columnSumsOf(
          sums.needles,
          followers,
          sums.bed.pushed[column]! & sums.bed.meets,
          sums.bed.pushes & sums.bed.meets,
          sums.rows,
          isRough,
          sums.byHand.columns[column]!,
        )
  })

/** Chance of a column that follows the card, by reader. */
export const soundColumn = (reader: Reader): number => {
  const { dead, high, over, sticky, other } = columnChances[reader]
  return 1 - dead - high - over - sticky - other
}

/** What a column may be; `hole` is a column that is sound under a card with a wrong hole. */
export type ColumnState = 'sound' | 'worn' | 'hole' | 'dead' | 'high' | 'over' | 'sticky' | 'other'

/**
 * The parts of what a column adds up to on a strip that follows at once, by state, where it doesn't stay pushed over.
 * `suffices` is the chance that its pushes do; where they don't, it is worn, whatever else it is but dead.
 */
export const columnParts = (
  sums: ColumnSums,
  reader: Reader,
  suffices: number,
): Readonly<Record<Exclude<ColumnState, 'over'>, number>> => {
  const { dead, high, over, sticky, other } = columnChances[reader]
  const sound = soundColumn(reader)
  const holes = sums.holes.reduce((sum, value) => sum + wrongHole * value, 0)
  return {
    sound: suffices * sound * (1 - sums.holes.length * wrongHole) * sums.follows,
    worn: (1 - suffices) * sound * sums.never,
    hole: suffices * sound * holes,
    dead: dead * sums.dead + (1 - suffices) * over * sums.never,
    high: high * (suffices * sums.always + (1 - suffices) * sums.never),
    sticky: sticky * (suffices * sums.sticky + (1 - suffices) * sums.never),
    other: other * sums.other,
  }
}

/** The sum of these parts. */
export const columnTotal = (sums: ColumnSums, reader: Reader, suffices: number): number => {
  const parts = columnParts(sums, reader, suffices)
  return parts.sound + parts.worn + parts.hole + parts.dead + parts.high + parts.sticky + parts.other
}

/** What a strip that follows at once adds up to, with the pins of `over` staying pushed over. */
export const fastTotal = (sums: FastSums, reader: Reader, suffices: number): number => {
  let product = 1
  for (const column of sums)
    product *=
      typeof column === 'number'
        ? suffices * columnChances[reader].over * column
        : columnTotal(column, reader, suffices)
  return product
}
