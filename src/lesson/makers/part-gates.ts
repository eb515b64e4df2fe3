import { dimensions } from '../../mechanism/dimensions.ts'
import { broken } from '../scene.ts'
import { bothWays, partAmong } from './parts.ts'

const { columns } = dimensions

/** The gates and what comes before them. */
export const gateParts = partAmong({
  views: bothWays,
  count: columns,
  suspects: ({ needle, strip }) => [
    broken('gate.1.low'),
    broken('gate.1.high'),
    broken('presser.right.worn'),
    broken('presser.left.worn'),
    broken('needle.stiff', [needle]),
    broken('strip.over', [strip]),
  ],
})
