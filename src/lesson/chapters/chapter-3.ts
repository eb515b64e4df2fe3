import { pinCheck } from '../makers/check.ts'
import { biteAsked } from '../makers/number-bite.ts'
import { pinOrCard } from '../makers/part-pins.ts'
import { askewCard, stuckPin } from '../makers/pins.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  pin: stuckPin,
  bite: biteAsked,
  askew: askewCard,
  part: pinOrCard,
  check: pinCheck,
}
