import { dimensions } from '../../mechanism/dimensions.ts'
import { broken } from '../setup.ts'
import { bothWays, onePass, partAmong, sameWay, twoSpeeds } from './part-among.ts'

const { columns, strips } = dimensions

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
    // Twelve milliseconds, as worksheets that were given out have it.
    broken('retainer.worn', [], 12),
    broken('pin.high', [column]),
  ],
})
