import { dimensions } from '../../mechanism/dimensions.ts'
import { broken } from '../scene.ts'
import { bothWays, partAmong, twoSpeeds } from './parts.ts'

const { strips } = dimensions

/** Any part. */
export const anyPart = partAmong({
  views: bothWays,
  suspects: ({ strip, column, needle, other }) => [
    broken('strip.seized', [strip]),
    broken('strip.over', [other]),
    broken('rocker.dead', [column]),
    broken('pin.high', [column]),
    broken('catch.broken', [needle]),
    broken('presser.left.worn'),
    broken('gate.1.high'),
    broken('belt.timing', [], strips),
  ],
})

/** Faults that speed tells apart. */
export const atSpeed = partAmong({
  views: twoSpeeds,
  suspects: ({ strip, column, needle }) => [
    broken('strip.slow', [strip]),
    broken('strip.over', [strip]),
    broken('needle.stiff', [needle]),
    broken('retainer.worn'),
    broken('pin.high', [column]),
  ],
})
