import { rowAsked, shortRowAsked } from '../makers/number-rows.ts'
import { turnOrder } from '../makers/order-turn.ts'
import { lateRow } from '../makers/needles-late-row.ts'
import { steppingPart } from '../makers/part-stepping.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  turn: turnOrder,
  row: rowAsked,
  late: lateRow,
  short: shortRowAsked,
  part: steppingPart,
}
