import { floatAsked } from '../makers/number-float.ts'
import { knittedAsked } from '../makers/number-knitted.ts'
import { fabricOrder } from '../makers/order-fabric.ts'
import { patternFaults } from '../makers/part-makers.ts'
import { nextRow } from '../makers/needles-next-row.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  fabric: fabricOrder,
  next: nextRow,
  knitted: knittedAsked,
  float: floatAsked,
  part: patternFaults,
}
