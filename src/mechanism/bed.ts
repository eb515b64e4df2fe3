import { dimensions } from './dimensions.ts'
import {
  allColumns,
  allNeedles,
  allStrips,
  type Column,
  isNeedle,
  type Needle,
  type Strip,
} from './indices.ts'
import { at } from './lookup.ts'

/** The directions of travel: +1 to the right, -1 to the left. */
const ways = [1, -1] as const
export type Way = (typeof ways)[number]

/** The two ends of the bed. */
export const sides = ['right', 'left'] as const
export type Side = (typeof sides)[number]

/** The side that the carriage travels towards. */
export const sideOfWay = (way: Way): Side => (way === 1 ? 'right' : 'left')

/** Needles in use, as indexes from the left end of the bed, both ends included. */
export interface Bed {
  readonly first: number
  readonly last: number
}

export const wholeBed: Bed = { first: 0, last: dimensions.needles - 1 }

/** Remainder that is never negative. */
export const modulo = (value: number, size: number): number => ((value % size) + size) % size

/** Column of the card that each needle belongs to, from the left end of the bed. R1 is column 1, L1 column 24. */
const columnsOfNeedles = allNeedles.map((needle) =>
  at(allColumns, modulo(needle - dimensions.needles / 2, dimensions.columns)),
)
const stripsOfColumns = allColumns.map((column) => at(allStrips, (column - 1) % dimensions.strips))

/** Column of the card, 1 to 24, that needle `index` (0 to 199) belongs to. Throws a RangeError for another number. */
export const columnOfNeedle = (index: number): Column => at(columnsOfNeedles, index)

/** Strip, 1 to 8, that column 1 to 24 works. Throws a RangeError for another number. */
export const stripOfColumn = (column: number): Strip => at(stripsOfColumns, column - 1)

/** Strip, 1 to 8, whose catch serves needle `index` (0 to 199). Throws a RangeError for another number. */
export const stripOfNeedle = (index: number): Strip => stripOfColumn(columnOfNeedle(index))

/** The trade's name of a needle: L100 to L1, then R1 to R100. */
export type NeedleName = `L${number}` | `R${number}`

/** The trade's name of needle `index`: L100 to L1, then R1 to R100. */
export const needleName = (index: number): NeedleName => {
  const middle = dimensions.needles / 2
  return index < middle ? `L${middle - index}` : `R${index - middle + 1}`
}

/** Index 0 to 199 of a needle named like L7 or R12; null where there is no such needle. */
export const needleIndex = (name: string): Needle | null => {
  const match = /^([LR])([1-9]\d{0,2})$/.exec(name)
  if (!match) return null
  const middle = dimensions.needles / 2
  const index = match[1] === 'L' ? middle - Number(match[2]) : middle - 1 + Number(match[2])
  return isNeedle(index) ? index : null
}

/** Way of pass 1, 2, 3 …: odd passes go to the right, even ones to the left. */
export const wayOfPass = (pass: number): Way => (pass % 2 === 1 ? 1 : -1)

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

/** The columns that work a strip, from the left. */
export const columnsOfStrip = (strip: Strip): readonly Column[] =>
  allColumns.filter((column) => stripOfColumn(column) === strip)
