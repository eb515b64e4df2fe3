import { columnChances, type Reader, wrongHole } from './chances.ts'
import { type ColumnSums, columnSumsOf } from './column-sums.ts'
import { valuesOf } from './follower-values.ts'
import { followersOf, type NotedStrip, stripColumns } from './frame.ts'
import { columnsPerStrip } from './layout.ts'

/** Every set of a strip's three columns, as bits: those whose pins stay pushed over. */
export const overSets = Array.from({ length: 1 << columnsPerStrip }, (_, set) => set)

/** How likely the notes of a strip's needles are, where all are offered a hold in these looks. */
export const stripValue = ({ frame, needles }: NotedStrip, strip: number, offered: number): number =>
  stripColumns(strip).reduce(
    (product, column) => product * valuesOf(needles, followersOf(frame, column, 0)).of(offered),
    1,
  )

/** By the strip's columns: the sums of one that may do anything, or the one number of one that stays pushed over. */
export type FastSums = readonly (ColumnSums | number)[]

/** How likely the notes of a strip's needles are where it follows its rockers, and the pins of `over` stay pushed over. */
export const fastSumsOf = (
  { frame, needles }: NotedStrip,
  strip: number,
  over: number,
  isRough: boolean,
): FastSums =>
  stripColumns(strip).map((column, n) => {
    const { bed, setting } = frame
    const values = valuesOf(needles, followersOf(frame, column, over))
    return over & (1 << n)
      ? setting.byHand.columns[column]!.over * values.of(0)
      : columnSumsOf(
          values,
          bed.pushed[column]! & bed.meets,
          bed.pushes & bed.meets,
          setting.rows,
          isRough,
          setting.byHand.columns[column]!,
        )
  })

/** Chance of a column that follows the card, by reader. */
export const soundColumn = (reader: Reader): number => {
  const { dead, high, over, sticky, other } = columnChances[reader]
  return 1 - dead - high - over - sticky - other
}

/** What a column may be; `hole` is a column that is sound under a card with a wrong hole. */
export type ColumnState = 'sound' | 'worn' | 'hole' | 'dead' | 'high' | 'over' | 'sticky' | 'other'

/** By state, what a column adds up to where it doesn't stay pushed over. */
export type ColumnParts = Readonly<Record<Exclude<ColumnState, 'over'>, number>>

/**
 * The parts of what a column adds up to on a strip that follows at once, by state, where it doesn't stay pushed over.
 * `suffices` is the chance that its pushes do; where they don't, it is worn, whatever else it is but dead.
 */
export const columnParts = (sums: ColumnSums, reader: Reader, suffices: number): ColumnParts => {
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
const columnTotal = (sums: ColumnSums, reader: Reader, suffices: number): number => {
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
