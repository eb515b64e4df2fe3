import { stripOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { firstGood } from '../draw.ts'
import type { Kit, Maker } from '../question.ts'
import { broken, everyColumn, indexesOf, mainRows, type Scene, someStretch } from '../scene.ts'
import { nameBroken } from './suspects.ts'
import { columnsOf } from './strips.ts'

const { columns, strips, speed } = dimensions

/** Places for faults that are easily mistaken for each other: one strip, one of its columns, one of its needles. */
interface Places {
  readonly strip: number
  readonly column: number
  readonly needle: number
  /** The pass seen; it reads the card row of its own number. */
  readonly pass: number
  readonly other: number
}

interface Looks {
  /** The passes and speeds at which the bed is seen. */
  readonly views: (pass: number) => readonly Scene[]
  readonly suspects: (places: Places) => readonly Fault[]
  /** How many needles are seen. */
  readonly count?: number
}

const maker =
  ({ views, suspects, count = 2 * columns }: Looks): Maker =>
  (kit: Kit) =>
    firstGood(() => {
      const { draw } = kit
      const stretch = someStretch(draw, count)
      const strip = draw.whole(1, strips)
      const pass = draw.whole(1, mainRows(kit.library).length - 2)
      const places: Places = {
        strip,
        column: draw.pick(columnsOf(strip)),
        needle: draw.pick(indexesOf(stretch).filter((index) => stripOfNeedle(index) === strip)),
        pass,
        other: draw.pick(everyColumn.slice(0, strips).filter((one) => one !== strip)),
      }
      return nameBroken(kit, { views: views(pass), stretch, suspects: suspects(places) })
    })

const onePass = (pass: number): Scene[] => [{ pass }]
const bothWays = (pass: number): Scene[] => [{ pass }, { pass: pass + 1 }]
const sameWay = (pass: number): Scene[] => [{ pass }, { pass: pass + 2 }]
const twoSpeeds = (pass: number): Scene[] => [
  { pass, speed: 1.5 * speed },
  { pass, speed: 0.4 * speed },
]

/** A first look: a strip, a rocker, a catch or the belt. */
export const firstLook = maker({
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
export const pinOrCard = maker({
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
export const drive = maker({
  views: bothWays,
  count: columns,
  suspects: ({ column }) => [
    broken('belt.timing', [], strips),
    broken('belt.timing', [], -strips),
    broken('belt.timing', [], 3),
    broken('belt.slack'),
    broken('sweep.worn'),
    broken('presser.right.worn'),
    broken('rocker.dead', [column]),
  ],
})

/** Rockers and strips. */
export const rockerOrStrip = maker({
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
export const holdParts = maker({
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
export const gateParts = maker({
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
export const patternFaults = maker({
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
export const anyPart = maker({
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
export const atSpeed = maker({
  views: twoSpeeds,
  suspects: ({ strip, column, needle }) => [
    broken('strip.slow', [strip]),
    broken('strip.over', [strip]),
    broken('needle.stiff', [needle]),
    broken('retainer.worn'),
    broken('pin.high', [column]),
  ],
})
