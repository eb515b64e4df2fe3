import { usualPlace } from '../mechanism/bed.ts'
import { type Card, columnBit, everyHole } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Fault } from '../mechanism/fault.ts'
import { allColumns, toColumn } from '../mechanism/indices.ts'
import { speeds as handSpeeds } from './battery.ts'
import { entriesFor } from './entries.ts'
import type { View } from './view.ts'

const { columns, strips } = dimensions

const bits = (isHole: (column: number) => boolean): number => {
  let row = 0
  for (let column = 1; column <= columns; column++) if (isHole(column)) row |= columnBit(toColumn(column))
  return row
}

/** Each strip's three columns with holes in all the eight ways, the same for every strip; blank first, all holes last. */
const togetherRows: Card = Array.from({ length: 8 }, (_, way) =>
  bits((column) => ((way >> Math.floor((column - 1) / strips)) & 1) === 1),
)

const singleRows: Card = allColumns.map(columnBit)

/**
 * Half of the columns. It makes the card's rows odd, so that each is read both ways; and read first, it shows a locked
 * card, which a blank row would hide.
 */
const halfRow = everyHole >> (columns / 2)

const card: Card = [halfRow, ...togetherRows, ...singleRows]

/** Below, between and above the speeds at which the amounts that faults are tried with begin to show, in mm/s. */
const speeds = { slow: 300, ordinary: dimensions.speed, fast: handSpeeds.fast } as const

const passes = (count: number, speed: number): View[] =>
  Array.from({ length: count }, (_, n) => ({ card, pass: n + 1, speed, shift: null, ...usualPlace }))

/**
 * Views that part whatever any card, way and speed part among the machine's own faults. A needle's outcome depends on
 * the pins of its strip's three columns, on the way, the speed and the row read, and on nothing else: so every fault
 * that stays within its strip shows all it can in the eight ways of holes in three columns. What mixes columns up
 * (a card reversed, a belt out by eights) or rows (pawls, a lock) is shown by the rows of a single hole, each read both
 * ways; what depends on speed by a speed on each side of every threshold; what only the card does by no card at all.
 */
export const everyView: readonly View[] = [
  ...passes(2 * card.length, speeds.ordinary),
  ...passes(togetherRows.length + 1, speeds.slow),
  ...passes(togetherRows.length + 1, speeds.fast),
  ...[1, 2].map((pass) => ({ card: null, pass, speed: speeds.ordinary, shift: null, ...usualPlace })),
]

/** The machine's own faults: without views there are no card's holes and no turns, which are no part of the machine. */
export const machineFaults = (): Fault[] => entriesFor([])
