import { broken } from '../scene.ts'
import { onePass, partAmong } from './parts.ts'

/** A first look: a strip, a rocker, a catch or the belt. */
export const firstLook = partAmong({
  views: onePass,
  suspects: ({ strip, column, needle, other }) => [
    broken('strip.seized', [strip]),
    broken('rocker.dead', [column]),
    broken('catch.broken', [needle]),
    broken('belt.timing'),
    broken('strip.seized', [other]),
  ],
})
