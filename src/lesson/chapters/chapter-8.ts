import { floatAsked } from '../makers/number-float.ts'
import { knittedAsked } from '../makers/number-knitted.ts'
import { fabricOrder } from '../makers/order-fabric.ts'
import { patternFaults } from '../makers/part-pattern.ts'
import { nextRow } from '../makers/row-next.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  fabric: fabricOrder,
  next: nextRow,
  knitted: knittedAsked,
  float: floatAsked,
  part: patternFaults,
}
