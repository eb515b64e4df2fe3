import { dimensions } from '../../mechanism/dimensions.ts'
import { broken } from '../scene.ts'
import { partAmong, sameWay } from './parts.ts'

const { columns, strips } = dimensions

/** Pins and the card over them: two rows tell them apart. */
export const pinOrCard = partAmong({
  views: sameWay,
  count: columns + strips,
  suspects: ({ column, pass }) => [
    broken('pin.low', [column]),
    broken('pin.high', [column]),
    broken('pin.over', [column]),
    broken('card.blocked', [pass, column]),
    broken('card.torn', [pass, column]),
  ],
})
