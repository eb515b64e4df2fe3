import { beltOut } from '../makers/needles-belt.ts'
import { decidedAsked } from '../makers/number-decided.ts'
import { sweepOrder } from '../makers/order-sweep.ts'
import { drive } from '../makers/part-makers.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = { order: sweepOrder, decided: decidedAsked, belt: beltOut, part: drive }
