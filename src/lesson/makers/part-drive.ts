import { dimensions } from '../../mechanism/dimensions.ts'
import { broken } from '../scene.ts'
import { bothWays, partAmong } from './parts.ts'

const { columns, strips } = dimensions

/** The sweep and its belt. */
export const drive = partAmong({
  views: bothWays,
  count: columns,
  suspects: ({ column }) => [
    broken('belt.timing', [], strips),
    broken('belt.timing', [], -strips),
    broken('belt.timing'),
    broken('belt.slack'),
    broken('sweep.worn'),
    broken('presser.right.worn'),
    broken('rocker.dead', [column]),
  ],
})
