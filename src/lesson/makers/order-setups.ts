import { type Way, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type NeedleRange, needlesIn, someRange } from '../needle-range.ts'
import type { Kit } from '../question.ts'
import { ownRow, rowWith, type Setup } from '../setup.ts'

const { columns } = dimensions

/** A card row with one hole, and the carriage where the presser lets go of its needle. */
export const oneHole = ({ random, columnOne }: Kit): { column: number; setup: Setup; needle: number } => {
  const column = random.whole(1, columns)
  const needle = columnOne + column - 1
  return { column, needle, setup: { card: ownRow(rowWith([column])), pass: random.whole(1, 2), at: needle } }
}

/** A pass over a range of 24 needles. `along` has them in the order in which the carriage comes to them. */
export const passOverRange = (kit: Kit): { range: NeedleRange; pass: number; way: Way; along: number[] } => {
  const range = someRange(kit, columns, 4)
  const pass = kit.random.whole(1, 2)
  const way = wayOfPass(pass)
  return { range, pass, way, along: way === 1 ? needlesIn(range) : needlesIn(range).reverse() }
}
