import { dimensions } from './dimensions.ts'
import { at, markAt, measureAt } from './lookup.ts'

/**
 * Numbers that must not be mixed: a needle, a column, a strip and a card row each have a type of their own. All of
 * them are plain numbers when the program runs.
 */
declare const counts: unique symbol
type Index<Of extends string> = number & { readonly [counts]: Of }

/** A needle, 0 to 199 from the left end of the bed. */
export type Needle = Index<'needle'>
/** A column of the card, and its pin and rocker: 1 to 24. */
export type Column = Index<'column'>
/** A selector strip, 1 to 8. */
export type Strip = Index<'strip'>
/** A row of a card, from 1. */
export type CardRow = Index<'row'>

const counted = (size: number, first: number): unknown => Array.from({ length: size }, (_, n) => first + n)

/** Every needle, from the left. */
export const allNeedles = counted(dimensions.needles, 0) as readonly Needle[]
/** Every column, 1 to 24. */
export const allColumns = counted(dimensions.columns, 1) as readonly Column[]
/** Every strip, 1 to 8. */
export const allStrips = counted(dimensions.strips, 1) as readonly Strip[]

const isWithin = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most

const refuse = (name: string, value: number, least: number, most: number): never => {
  throw new RangeError(`there is no ${name} ${value}; they run from ${least} to ${most}`)
}

/** Whether a number is a needle's index, 0 to 199. */
export const isNeedle = (value: number): value is Needle => isWithin(value, 0, dimensions.needles - 1)
/** Whether a number is a column, 1 to 24. */
export const isColumn = (value: number): value is Column => isWithin(value, 1, dimensions.columns)
/** Whether a number is a strip, 1 to 8. */
export const isStrip = (value: number): value is Strip => isWithin(value, 1, dimensions.strips)
/** Whether a number is a row, from 1, of a card with this many rows. */
export const isCardRow = (value: number, rows: number): value is CardRow => isWithin(value, 1, rows)

/** A needle from its index, 0 to 199. Throws a RangeError for any other number. */
export const toNeedle = (value: number): Needle =>
  isNeedle(value) ? value : refuse('needle', value, 0, dimensions.needles - 1)

/** A column from its number, 1 to 24. Throws a RangeError for any other number. */
export const toColumn = (value: number): Column =>
  isColumn(value) ? value : refuse('column', value, 1, dimensions.columns)

/** A strip from its number, 1 to 8. Throws a RangeError for any other number. */
export const toStrip = (value: number): Strip =>
  isStrip(value) ? value : refuse('strip', value, 1, dimensions.strips)

/** A row from its number, 1 to `rows`: as many as the card has. Throws a RangeError for any other number. */
export const toCardRow = (value: number, rows: number): CardRow =>
  isCardRow(value, rows) ? value : refuse('row', value, 1, rows)

/** Every row of a card with this many rows, from 1. */
export const rowsOf = (rows: number): CardRow[] => counted(rows, 1) as CardRow[]

/** The needles from `first` to `last`, both included; none where `last` is left of `first`. */
export const needlesBetween = (first: Needle, last: Needle): readonly Needle[] =>
  allNeedles.slice(first, last + 1)

/** A needle's entry in a list with one entry for each needle, needle 0 first. Throws a RangeError where it is missing. */
export const ofNeedle = <Entry>(list: ArrayLike<Entry>, needle: Needle): Entry => at(list, needle)

/** A column's entry in a list with one entry for each column, column 1 first. Throws a RangeError where it is missing. */
export const ofColumn = <Entry>(list: ArrayLike<Entry>, column: Column): Entry => at(list, column - 1)

/** A strip's entry in a list with one entry for each strip, strip 1 first. Throws a RangeError where it is missing. */
export const ofStrip = <Entry>(list: ArrayLike<Entry>, strip: Strip): Entry => at(list, strip - 1)

/** A row's entry in a list with one entry for each row, such as a card. Throws a RangeError where it is missing. */
export const ofRow = <Entry>(list: ArrayLike<Entry>, row: CardRow): Entry => at(list, row - 1)

/** A needle's length in mm or time in ms, among one for each needle. Throws a RangeError where it is missing. */
export const measureOfNeedle = (list: Float64Array, needle: Needle): number => measureAt(list, needle)

/** A column's length in mm or time in ms, among one for each column. Throws a RangeError where it is missing. */
export const measureOfColumn = (list: Float64Array, column: Column): number => measureAt(list, column - 1)

/** A strip's length in mm or time in ms, among one for each strip. Throws a RangeError where it is missing. */
export const measureOfStrip = (list: Float64Array, strip: Strip): number => measureAt(list, strip - 1)

/** A needle's mark or state, among one for each needle. Throws a RangeError where it is missing. */
export const markOfNeedle = (list: Uint8Array, needle: Needle): number => markAt(list, needle)

/** A column's mark or state, among one for each column. Throws a RangeError where it is missing. */
export const markOfColumn = (list: Uint8Array, column: Column): number => markAt(list, column - 1)

/** A strip's mark or state, among one for each strip. Throws a RangeError where it is missing. */
export const markOfStrip = (list: Uint8Array, strip: Strip): number => markAt(list, strip - 1)
