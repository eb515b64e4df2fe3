import { dimensions } from './dimensions.ts'
import { at, markAt, measureAt } from './lookup.ts'

/**
 * Numbers that must not be mixed: a needle, a column, a strip and a card row each have a type of their own. All of
 * them are plain numbers when the program runs.
 */
declare const counts: unique symbol
type Index<Of extends string> = number & { readonly [counts]: Of }

/**
 * A needle by its place along the bed. R1 is 100 and L1 is 99 on every machine, so that a needle has the same number on a
 * long bed as on a short one: 0 to 199 on the training machine, -25 to 224 on the longest bed.
 */
export type Needle = Index<'needle'>
/** A column of the card, and its pin and rocker: 1 to 24. */
export type Column = Index<'column'>
/** A selector strip, 1 to 8. */
export type Strip = Index<'strip'>
/** A row of a card, from 1. */
export type CardRow = Index<'row'>

const counted = (size: number, first: number): unknown => Array.from({ length: size }, (_, n) => first + n)

/** How many needles a bed may have; half of them are at each side of its middle, so the number is even. */
export const bedLengths = { least: 60, most: 250 } as const

/** The place of R1, the first needle to the right of the middle of every bed. */
const middle = dimensions.needles / 2

/**
 * Where a needle's entry is in a list with one entry for each needle of a bed, from the left: the specification's i, 0
 * for the bed's first needle. A list is as long as its bed, whose middle is between L1 and R1.
 */
export const slotOf = (needle: number, needles: number): number => needle - middle + needles / 2

const longestBed = counted(bedLengths.most, middle - bedLengths.most / 2) as readonly Needle[]

const bedOf = (needles: number): readonly Needle[] => {
  const beyond = (bedLengths.most - needles) / 2
  return longestBed.slice(beyond, bedLengths.most - beyond)
}

/** Every needle of the training machine, from the left. */
export const allNeedles = bedOf(dimensions.needles)

/** Every needle of a bed with so many of them, an even number of at most 250, from the left. */
export const needlesOfBed = (needles: number): readonly Needle[] =>
  needles === dimensions.needles ? allNeedles : bedOf(needles)
/** Every column, 1 to 24. */
export const allColumns = counted(dimensions.columns, 1) as readonly Column[]
/** Every strip, 1 to 8. */
export const allStrips = counted(dimensions.strips, 1) as readonly Strip[]

const isWithin = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most

const refuse = (name: string, value: number, least: number, most: number): never => {
  throw new RangeError(`there is no ${name} ${value}; they run from ${least} to ${most}`)
}

/** Whether a number is a needle's on a bed of so many needles; where that is left out, on the longest. */
export const isNeedle = (value: number, needles: number = bedLengths.most): value is Needle =>
  isWithin(slotOf(value, needles), 0, needles - 1)
/** Whether a number is a column, 1 to 24. */
export const isColumn = (value: number): value is Column => isWithin(value, 1, dimensions.columns)
/** Whether a number is a strip, 1 to 8. */
export const isStrip = (value: number): value is Strip => isWithin(value, 1, dimensions.strips)
/** Whether a number is a row, from 1, of a card with this many rows. */
export const isCardRow = (value: number, rows: number): value is CardRow => isWithin(value, 1, rows)

/** A needle from its number, -25 to 224. Throws a RangeError for any other number. */
export const toNeedle = (value: number): Needle =>
  isNeedle(value)
    ? value
    : refuse('needle', value, middle - bedLengths.most / 2, middle + bedLengths.most / 2 - 1)

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
  longestBed.slice(slotOf(first, bedLengths.most), slotOf(last, bedLengths.most) + 1)

/** A needle's entry in a list with one entry for each needle of a bed. Throws a RangeError where it is missing. */
export const ofNeedle = <Entry>(list: ArrayLike<Entry>, needle: Needle): Entry =>
  at(list, slotOf(needle, list.length))

/** A needle of a bed by its place in a list with one entry for each needle. Throws a RangeError where there is none. */
export const needleAtSlot = (slot: number, needles: number): Needle => toNeedle(slot + middle - needles / 2)

/** A column's entry in a list with one entry for each column, column 1 first. Throws a RangeError where it is missing. */
export const ofColumn = <Entry>(list: ArrayLike<Entry>, column: Column): Entry => at(list, column - 1)

/** A strip's entry in a list with one entry for each strip, strip 1 first. Throws a RangeError where it is missing. */
export const ofStrip = <Entry>(list: ArrayLike<Entry>, strip: Strip): Entry => at(list, strip - 1)

/** A row's entry in a list with one entry for each row, such as a card. Throws a RangeError where it is missing. */
export const ofRow = <Entry>(list: ArrayLike<Entry>, row: CardRow): Entry => at(list, row - 1)

/** A needle's length in mm or time in ms, among one for each needle. Throws a RangeError where it is missing. */
export const measureOfNeedle = (list: Float64Array, needle: Needle): number =>
  measureAt(list, slotOf(needle, list.length))

/** A column's length in mm or time in ms, among one for each column. Throws a RangeError where it is missing. */
export const measureOfColumn = (list: Float64Array, column: Column): number => measureAt(list, column - 1)

/** A strip's length in mm or time in ms, among one for each strip. Throws a RangeError where it is missing. */
export const measureOfStrip = (list: Float64Array, strip: Strip): number => measureAt(list, strip - 1)

/** A needle's mark or state, among one for each needle. Throws a RangeError where it is missing. */
export const markOfNeedle = (list: Uint8Array, needle: Needle): number =>
  markAt(list, slotOf(needle, list.length))

/** A column's mark or state, among one for each column. Throws a RangeError where it is missing. */
export const markOfColumn = (list: Uint8Array, column: Column): number => markAt(list, column - 1)

/** A strip's mark or state, among one for each strip. Throws a RangeError where it is missing. */
export const markOfStrip = (list: Uint8Array, strip: Strip): number => markAt(list, strip - 1)
