import { badHold } from '../makers/needles-hold.ts'
import { dipAsked } from '../makers/number-dip.ts'
import { holdOrder } from '../makers/order-hold.ts'
import { holdParts } from '../makers/part-makers.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = { order: holdOrder, dip: dipAsked, hold: badHold, part: holdParts }
