import { type CardPlace, columnOfNeedle, needleName, stripOfColumn } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, allNeedles, type Column, type Strip } from '../../mechanism/indices.ts'

/** A column of the card with its strip, and its needles from the left. */
export interface ColumnLine {
  readonly column: Column
  readonly strip: Strip
  readonly left: readonly string[]
  readonly right: readonly string[]
}

/** Every needle by its column, on a bed with the card at this place. */
export const needleTable = (place: CardPlace): ColumnLine[] =>
  allColumns.map((column) => {
    const needles = allNeedles.filter((needle) => columnOfNeedle(needle, place) === column)
    const names = (isRight: boolean): string[] =>
      needles.filter((needle) => needle >= dimensions.needles / 2 === isRight).map(needleName)
    return { column, strip: stripOfColumn(column), left: names(false), right: names(true) }
  })
