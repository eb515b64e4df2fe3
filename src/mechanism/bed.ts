import { dimensions } from './dimensions.ts'
import {
  allColumns,
  allStrips,
  type Column,
  isNeedle,
  type Needle,
  needlesBetween,
  needlesOfBed,
  ofColumn,
  ofStrip,
  type Strip,
  toNeedle,
} from './indices.ts'
import { at, lastOf } from './lookup.ts'

/** The directions of travel: +1 to the right, -1 to the left. */
export type Way = 1 | -1

/** The two ends of the bed. */
export const sides = ['right', 'left'] as const
export type Side = (typeof sides)[number]

/** The side that the carriage travels towards. */
export const sideOfWay = (way: Way): Side => (way === 1 ? 'right' : 'left')

/** The needles in use: the first and the last from the left. */
export interface Bed {
  readonly first: Needle
  readonly last: Needle
}

/** A bed from two numbers. Throws a RangeError where one is no needle. */
export const toBed = ({ first, last }: { readonly first: number; readonly last: number }): Bed => ({
  first: toNeedle(first),
  last: toNeedle(last),
})

/** A whole bed of so many needles. */
export const wholeBedOf = (needles: number): Bed => {
  const all = needlesOfBed(needles)
  return { first: at(all, 0), last: lastOf(all) }
}

/** Every needle of the training machine in use. */
export const wholeBed: Bed = wholeBedOf(dimensions.needles)

/** Needles in use, cut to those that a bed of so many has; the whole bed where it has none of them. */
export const bedWithin = ({ first, last }: Bed, needles: number): Bed => {
  const whole = wholeBedOf(needles)
  if (first > whole.last || last < whole.first) return whole
  return toBed({ first: Math.max(first, whole.first), last: Math.min(last, whole.last) })
}

/** The needles in use, from the left. */
export const needlesIn = ({ first, last }: Bed): readonly Needle[] => needlesBetween(first, last)

/** Remainder that is never negative. */
export const modulo = (value: number, size: number): number => ((value % size) + size) % size

/** Where the columns of the card lie along the bed. */
export interface CardPlace {
  /** A needle of column 1; the needles 24 to either side of it are of column 1, too. */
  readonly columnOne: Needle
}

/** The training machine's own place for the card: R1 is column 1, L1 column 24. */
export const usualPlace: CardPlace = { columnOne: toNeedle(dimensions.needles / 2) }

/** The place that means the same, with the needle of column 1 among R1 to R24. */
export const canonicalPlace = ({ columnOne }: CardPlace): CardPlace => placeOf(columnOne)

/** The same from a place along the bed that may be past its ends. */
const placeOf = (place: number): CardPlace => ({
  columnOne: toNeedle(usualPlace.columnOne + modulo(place - usualPlace.columnOne, dimensions.columns)),
})

const stripsOfColumns = allColumns.map((column) => at(allStrips, (column - 1) % dimensions.strips))

/**
 * Where the card lies along the bed, from one hole and one pass: a needle that knits the pattern under the hole, any of
 * them, and the column that the hole is in.
 */
export const placeByHole = (needle: Needle, column: Column): CardPlace => placeOf(needle - (column - 1))

/** Column of the card that a needle belongs to. */
export const columnOfNeedle = (needle: Needle, { columnOne }: CardPlace): Column =>
  at(allColumns, modulo(needle - columnOne, dimensions.columns))

/** Strip that a column works. */
export const stripOfColumn = (column: Column): Strip => ofColumn(stripsOfColumns, column)

/** Strip whose catch serves a needle. */
export const stripOfNeedle = (needle: Needle, place: CardPlace): Strip =>
  stripOfColumn(columnOfNeedle(needle, place))

/** The needles that a strip has catches for, from the left: every eighth of a whole bed of so many needles. */
export const needlesOfStrip = (
  strip: Strip,
  { columnOne }: CardPlace,
  needles: number = dimensions.needles,
): Needle[] => {
  const first = modulo(columnOne + strip - 1, dimensions.strips)
  return needlesOfBed(needles).filter((needle) => modulo(needle, dimensions.strips) === first)
}

const columnsOfStrips = allStrips.map((strip) =>
  allColumns.filter((column) => stripOfColumn(column) === strip),
)

/** The columns that work a strip, from column 1: every eighth. */
export const columnsOfStrip = (strip: Strip): readonly Column[] => ofStrip(columnsOfStrips, strip)

/** The trade's name of a needle, such as L100 to L1, then R1 to R100. */
export type NeedleName = `L${number}` | `R${number}`

/** The trade's name of a needle: L1 and R1 are beside the middle of every bed. */
export const needleName = (needle: Needle): NeedleName => {
  const middle = dimensions.needles / 2
  return needle < middle ? `L${middle - needle}` : `R${needle - middle + 1}`
}

/** The needle named like L7 or R12; null where a bed of so many needles has none of that name. */
export const needleIndex = (name: string, needles: number = dimensions.needles): Needle | null => {
  const match = /^([LR])([1-9]\d{0,2})$/.exec(name)
  if (!match) return null
  const middle = dimensions.needles / 2
  const index = match[1] === 'L' ? middle - Number(match[2]) : middle - 1 + Number(match[2])
  return isNeedle(index, needles) ? index : null
}

/** Way of pass 1, 2, 3 …: odd passes go to the right, even ones to the left. */
export const wayOfPass = (pass: number): Way => (pass % 2 === 1 ? 1 : -1)

/** The side at which the turn before pass `pass` happens: the right after an odd pass. */
export const sideOfTurn = (pass: number): Side => sideOfWay(wayOfPass(pass - 1))

/** Where pass `pass` starts and ends, in needles: at the turn marks on both sides of the needles in use. */
export const passEnds = (pass: number, bed: Bed): { start: number; end: number } => {
  const left = bed.first - dimensions.turnMark
  const right = bed.last + dimensions.turnMark
  return wayOfPass(pass) === 1 ? { start: left, end: right } : { start: right, end: left }
}

/** A carriage position in needles, brought within the turn marks of pass `pass`. */
export const withinPass = (x: number, pass: number, bed: Bed): number => {
  const { start, end } = passEnds(pass, bed)
  return Math.min(Math.max(start, end), Math.max(Math.min(start, end), x))
}
