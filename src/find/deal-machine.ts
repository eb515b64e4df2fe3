import { type Fault, makeFault } from '../mechanism/fault.ts'
import { contradict } from '../mechanism/fault-list.ts'
import { faultOf } from '../mechanism/read-fault.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { allColumns, allStrips, toNeedle } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import {
  columnChances,
  needleChances,
  retainerChances,
  slowChances,
  stiffMs,
  stripChances,
  wearChances,
} from './chances.ts'
import { kindAndPlace } from './query.ts'
import { numbersFrom, type Numbers, pickBy, pickIndex } from './seeded.ts'

/** A machine to practise on: what is wrong with it, how worn it is, and whose scatter it has. */
export interface DealtMachine {
  readonly faults: readonly Fault[]
  readonly wear: number
  readonly seed: number
}

/** How hard a machine is: one fault, two or three of any kind, or an old machine with set oil and up to eight. */
export const levels = [1, 2, 3] as const
export type Level = (typeof levels)[number]

/** So many faults at least and at most, by level. */
const counts: Readonly<Record<Level, readonly [number, number]>> = { 1: [1, 1], 2: [2, 3], 3: [4, 8] }

const slowFault = (strip: number, next: Numbers): Fault => {
  const { ms } = pickBy(slowChances, ({ chance }) => chance, next)
  return makeFault('strip.slow', [strip], ms)
}

/** Each strip as old oil that has set leaves it. */
const stripsOf = (next: Numbers): Fault[] => {
  const { slow, seized, over } = stripChances.set
  return allStrips.flatMap((strip) => {
    const which = pickIndex([1 - slow - seized - over, slow, seized, over], next)
    if (which === 1) return slowFault(strip, next)
    return which === 0 ? [] : makeFault(which === 2 ? 'strip.seized' : 'strip.over', [strip], null)
  })
}

/** Each column as a usual reader has it. */
const columnsOf = (next: Numbers): Fault[] => {
  const { dead, high, over, sticky } = columnChances.usual
  const kinds = [null, 'pin.low', 'pin.high', 'pin.over', 'pin.sticky'] as const
  return allColumns.flatMap((column) => {
    const kind = at(kinds, pickIndex([1 - dead - high - over - sticky, dead, high, over, sticky], next))
    return kind === null ? [] : makeFault(kind, [column], kind === 'pin.sticky' ? 0.5 : null)
  })
}

const needlesOf = (next: Numbers): Fault[] => {
  const { noHold, stiff, gone } = needleChances
  const kinds = [null, 'needle.bent', 'needle.stiff', 'needle.gone'] as const
  return Array.from({ length: dimensions.needles }, (_, needle) => {
    const kind = at(kinds, pickIndex([1 - noHold - stiff - gone, noHold, stiff, gone], next))
    return kind === null
      ? []
      : [makeFault(kind, [toNeedle(needle)], kind === 'needle.stiff' ? stiffMs : null)]
  }).flat()
}

const isAlone = (fault: Fault, others: readonly Fault[]): boolean =>
  others.every((other) => kindAndPlace(other) !== kindAndPlace(fault) && !contradict(fault, other))

/** An old machine: its strips, columns, needles, bar and wear as the tables have them, drawn again until as many are wrong as its level asks. */
const oldMachine = (next: Numbers, [least, most]: readonly [number, number]): DealtMachine => {
  for (;;) {
    const bar = next() < retainerChances.set ? [faultOf('retainer.worn=9')] : []
    const faults = [...stripsOf(next), ...columnsOf(next), ...needlesOf(next), ...bar]
    const { wear } = pickBy(wearChances, ({ chance }) => chance, next)
    if (faults.length >= least && faults.length <= most)
      return { faults, wear: Math.min(wear, 0.5), seed: 1 + Math.floor(next() * 1e6) }
  }
}

/**
 * The machine of a seed and a level: of level 1 the fault that `single` deals for it, of level 2 two or three such, and of
 * level 3 an old one.
 */
export const dealtMachine = (seed: number, level: Level, single: (seed: number) => Fault): DealtMachine => {
  const [least, most] = counts[level]
  if (level === 1) return { faults: [single(seed)], wear: 0, seed: 1 }
  const next = numbersFrom(seed)
  if (level === 3) return oldMachine(next, [least, most])
  const count = least + Math.floor(next() * (most - least + 1))
  const faults: Fault[] = []
  while (faults.length < count) {
    const fault = single(Math.floor(next() * 0x100000000))
    if (isAlone(fault, faults) && !hidesAll(fault)) faults.push(fault)
  }
  return { faults, wear: 0, seed: 1 }
}

/** Settings by which nothing, or everything, is selected whatever else is wrong: with them nothing else could be seen. */
const hidesAll = ({ kind }: Fault): boolean =>
  [
    'carriage.plain',
    'belt.off',
    'gate.1.low',
    'gate.1.high',
    'sweep.worn',
    'belt.timing',
    'card.side',
  ].includes(kind)
