import { columnAsked } from '../makers/number-names.ts'
import { chainOrder } from '../makers/order-chain.ts'
import { firstLook } from '../makers/part-makers.ts'
import { soundRow } from '../makers/needles-sound-row.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = { row: soundRow, chain: chainOrder, column: columnAsked, part: firstLook }
