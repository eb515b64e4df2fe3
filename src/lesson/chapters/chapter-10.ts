import { anyCheck, benchCheck } from '../makers/check.ts'
import { benchOrder } from '../makers/order-bench.ts'
import { anyPart, atSpeed } from '../makers/part-makers.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  order: benchOrder,
  check: benchCheck,
  any: anyCheck,
  part: anyPart,
  speed: atSpeed,
}
