import { dimensions } from '../../mechanism/dimensions.ts'
import { broken } from '../scene.ts'
import { bothWays, partAmong } from './parts.ts'

const { columns, strips } = dimensions

/** Faults that change the whole pattern, as the fabric shows it. */
export const patternFaults = partAmong({
  views: bothWays,
  count: columns,
  suspects: ({ pass, column }) => [
    broken('card.reversed'),
    broken('card.locked'),
    broken('belt.timing', [], strips),
    broken('turn.short', [Math.max(2, pass)]),
    broken('card.side'),
    broken('pin.low', [column]),
  ],
})
