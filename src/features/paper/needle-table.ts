import { modulo, needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, allNeedles, type Column, type Needle, type Strip } from '../../mechanism/indices.ts'

/** A column of the card with its strip, and its needles from the left. */
export interface ColumnLine {
  readonly column: Column
  readonly strip: Strip
  readonly left: readonly string[]
  readonly right: readonly string[]
}

/** Every needle by its column, on a bed where `first` is a needle of column 1. */
export const needleTable = (first: Needle): ColumnLine[] =>
  allColumns.map((column) => {
    const needles = allNeedles.filter(
      (needle) => modulo(needle - first, dimensions.columns) + 1 === Number(column),
    )
    const names = (isRight: boolean): string[] =>
      needles.filter((needle) => needle >= dimensions.needles / 2 === isRight).map(needleName)
    return { column, strip: stripOfColumn(column), left: names(false), right: names(true) }
  })
