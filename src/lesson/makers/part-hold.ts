import { broken } from '../scene.ts'
import { bothWays, partAmong } from './parts.ts'

/** What holds a butt: catch, butt, presser. */
export const holdParts = partAmong({
  views: bothWays,
  suspects: ({ strip, column, needle }) => [
    broken('catch.broken', [needle]),
    broken('needle.gone', [needle]),
    broken('strip.seized', [strip]),
    broken('rocker.dead', [column]),
    broken('presser.right.worn'),
    broken('presser.left.worn'),
  ],
})
