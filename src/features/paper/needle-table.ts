import { type CardPlace, columnOfNeedle, needleName, stripOfColumn, usualPlace } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allColumns, needlesOfBed, type Column, type Strip } from '../../mechanism/indices.ts'

/** A column of the card with its strip, and its needles from the left. */
export interface ColumnLine {
  readonly column: Column
  readonly strip: Strip
  readonly left: readonly string[]
  readonly right: readonly string[]
}

/** Every needle by its column, on a bed of so many needles with the card at this place. */
export const needleTable = (place: CardPlace, bedNeedles: number = dimensions.needles): ColumnLine[] =>
  allColumns.map((column) => {
    const needles = needlesOfBed(bedNeedles).filter((needle) => columnOfNeedle(needle, place) === column)
    const names = (isRight: boolean): string[] =>
      needles.filter((needle) => needle >= usualPlace.columnOne === isRight).map(needleName)
    return { column, strip: stripOfColumn(column), left: names(false), right: names(true) }
  })
