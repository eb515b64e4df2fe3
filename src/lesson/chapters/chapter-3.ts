import { pinCheck } from '../makers/check.ts'
import { biteAsked } from '../makers/number-bite.ts'
import { pinOrCard } from '../makers/part-makers.ts'
import { askewCard, stuckPin } from '../makers/needles-pins.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  pin: stuckPin,
  bite: biteAsked,
  askew: askewCard,
  part: pinOrCard,
  check: pinCheck,
}
