import { needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Needle } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { retainerMs } from './chances.ts'
import type { DrawnMachine, DrawnStrip } from './draw-machines.ts'
import type { DrawnColumn } from './drawn-columns.ts'
import { stripColumns } from './frame.ts'
import type { Cause } from './place.ts'
import { numbersFrom, type Numbers } from './seeded.ts'
import type { BedMachines } from './whole-machines.ts'
import type { WideState } from './wide-states.ts'
import { possibleNeedles, possibleSlot } from './bed-needles.ts'

/**
 * A part of the machine whose places touch one another: a strip with its columns, or what reaches the whole bed. Drawn
 * machines with the same label have the same things wrong there, whatever the amounts.
 */
export interface Component {
  /** By drawn machine: an index in `causes`. */
  readonly labels: Int32Array
  /** By label: one cause for each thing that is wrong. */
  readonly causes: readonly (readonly Cause[])[]
}

/** What is wrong with a drawn column, numbered from 1; of what no look parts, one is drawn. */
export const columnCause = (column: number, { state, stays }: DrawnColumn, next: Numbers): Cause[] => {
  switch (state) {
    case 'sound':
    case 'worn':
    case 'hole':
      return []
    case 'dead':
      return [next() < 0.5 ? `pin.${column}.low` : `rocker.${column}.dead`]
    case 'high':
      return [`pin.${column}.high`]
    case 'over':
      return [`pin.${column}.over`]
    case 'sticky':
      return [`pin.${column}.sticky=${stays}`]
    case 'other':
      return ['other']
  }
}

/** What is wrong with a drawn strip and its columns; of what no look parts, one is drawn. */
export const stripCausesOf = (strip: number, { state, columns }: DrawnStrip, next: Numbers): Cause[] => [
  ...(state === 'right'
    ? []
    : [
        state === 'slow'
          ? (`strip.${strip + 1}.slow=300` as const)
          : (`strip.${strip + 1}.${state}` as const),
      ]),
  ...stripColumns(strip).flatMap((column, m) => columnCause(column + 1, at(columns, m), next)),
]

/** What of a drawn machine reaches the whole bed. */
export const wideCausesOf = ({ bed, retainer, isLoose }: DrawnMachine, next: Numbers): Cause[] => [
  ...bed.state.causes.map(({ causes }) => at(causes, Math.floor(next() * causes.length))),
  ...(retainer >= 0 ? [`retainer.worn=${at(retainerMs, retainer)}` as const] : []),
  ...(isLoose ? ['pivots.loose=0.4' as const] : []),
]

const componentOf = (causes: readonly (readonly Cause[])[]): Component => {
  const labels = new Int32Array(causes.length)
  const known = new Map<string, number>()
  const distinct: (readonly Cause[])[] = []
  for (const [n, own] of causes.entries()) {
    const key = own.map((cause) => cause.replace(/=.*/, '')).join(' ')
    let label = known.get(key)
    if (label === undefined) {
      known.set(key, (label = distinct.length))
      distinct.push(own)
    }
    labels[n] = label
  }
  return { labels, causes: distinct }
}

/** The components of drawn machines: what reaches the whole bed first, then each strip. */
export const componentsOf = (machines: readonly DrawnMachine[], seed: number): Component[] => {
  const next = numbersFrom(seed)
  return [
    componentOf(machines.map((machine) => wideCausesOf(machine, next))),
    ...Array.from({ length: dimensions.strips }, (_, strip) =>
      componentOf(machines.map(({ strips }) => stripCausesOf(strip, at(strips, strip), next))),
    ),
  ]
}

/** How likely a needle is each of what it may be; they add up to 1. */
export interface NeedleChances {
  readonly needle: Needle
  readonly right: number
  readonly noHold: number
  readonly stiff: number
  readonly gone: number
  readonly other: number
}

/** Needles less likely wrong than this have nothing to settle. */
const leastWrong = 1e-3

/** The needles of which something is left to settle, where these beds are all that is possible. */
export const doubtfulNeedles = (beds: readonly BedMachines[]): NeedleChances[] => {
  const whole = beds.reduce((sum, { share }) => sum + share, 0)
  return possibleNeedles
    .map((needle): NeedleChances => {
      const of = (n: number): number =>
        beds.reduce(
          (sum, { whole: { needles, share: of }, share }) =>
            sum + (at(needles, possibleSlot(needle) * 4 + n) / of) * share,
          0,
        ) / whole
      const [noHold, stiff, gone, other] = [of(0), of(1), of(2), of(3)]
      const right = Math.max(0, 1 - noHold - stiff - gone - other)
      return { needle, right, noHold, stiff, gone, other }
    })
    .filter(({ right }) => 1 - right > leastWrong)
}

/** What is possible in one state of the whole bed: its share of all, and the needles in doubt where it is so. */
export interface StateNeedles {
  readonly state: WideState
  readonly share: number
  readonly needles: readonly NeedleChances[]
}

/** The needles in doubt by the state of the whole bed: what one state shows of a needle, another hides. */
export const needlesByState = (beds: readonly BedMachines[]): StateNeedles[] =>
  [...Map.groupBy(beds, ({ bed }) => bed.state)].map(([state, own]) => ({
    state,
    share: own.reduce((sum, { share }) => sum + share, 0),
    needles: doubtfulNeedles(own),
  }))

/** What may be wrong with a needle, each cause with its chance. */
export const needleCausesOf = ({ needle, noHold, stiff, gone }: NeedleChances): [Cause, number][] => {
  const name = needleName(needle)
  return [
    [`catch.${name}.broken`, noHold / 2],
    [`needle.${name}.bent`, noHold / 2],
    [`needle.${name}.stiff`, stiff],
    [`needle.${name}.gone`, gone],
  ]
}
