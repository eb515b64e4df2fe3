import { badHold } from '../makers/hold-bad.ts'
import { dipAsked } from '../makers/number-dip.ts'
import { holdOrder } from '../makers/order-hold.ts'
import { holdParts } from '../makers/part-hold.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = { order: holdOrder, dip: dipAsked, hold: badHold, part: holdParts }
