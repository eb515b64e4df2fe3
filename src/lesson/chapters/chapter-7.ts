import { camCheck } from '../makers/check.ts'
import { badGate } from '../makers/needles-gate.ts'
import { gateAsked } from '../makers/number-gap.ts'
import { gateOrder } from '../makers/order-hold.ts'
import { gateParts } from '../makers/part-makers.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  order: gateOrder,
  gap: gateAsked,
  gate: badGate,
  part: gateParts,
  check: camCheck,
}
