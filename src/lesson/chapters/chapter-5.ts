import { lostAsked } from '../makers/number-lost.ts'
import { stripAsked } from '../makers/number-names.ts'
import { stripOrder } from '../makers/order-strips.ts'
import { rockerOrStrip } from '../makers/part-makers.ts'
import { badStrip } from '../makers/needles-strip.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  strip: stripAsked,
  bad: badStrip,
  order: stripOrder,
  lost: lostAsked,
  part: rockerOrStrip,
}
