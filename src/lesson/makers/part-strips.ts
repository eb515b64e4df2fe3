import { broken } from '../scene.ts'
import { onePass, partAmong } from './parts.ts'

/** Rockers and strips. */
export const rockerOrStrip = partAmong({
  views: onePass,
  suspects: ({ strip, column, other }) => [
    broken('strip.seized', [strip]),
    broken('strip.over', [strip]),
    broken('rocker.dead', [column]),
    broken('pin.high', [column]),
    broken('strip.seized', [other]),
  ],
})
