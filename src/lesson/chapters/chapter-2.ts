import { rowAsked, shortRowAsked } from '../makers/number-rows.ts'
import { turnOrder } from '../makers/order-turn.ts'
import { lateRow } from '../makers/row-late.ts'
import { steppingPart } from '../makers/rows-read.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  turn: turnOrder,
  row: rowAsked,
  late: lateRow,
  short: shortRowAsked,
  part: steppingPart,
}
