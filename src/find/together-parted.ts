import { columnsOfStrip, needlesOfStrip } from '../mechanism/bed.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { allStrips, type Needle, type Strip } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { conditionOf } from '../mechanism/condition.ts'
import { passDrive } from '../mechanism/drive.ts'
import { needleCode } from './needle-code.ts'
import { stiffMs } from './chances.ts'
import { scenarioIn, type View } from './view.ts'

/** Kinds of place within a strip. */
export type PlaceKind = 'strip' | 'column' | 'needle'

/** What a place may have, each by itself. */
interface Part {
  readonly kind: PlaceKind
  readonly ways: readonly Fault[]
}

const faultsAt = (kinds: readonly (readonly [FaultKindName, number | null])[], index: number): Fault[] =>
  kinds.map(([kind, amount]) => makeFault(kind, [index], amount))

const stripKinds = [
  ['strip.seized', null],
  ['strip.over', null],
  ['strip.slow', 300],
] as const
const pinKinds = [
  ['pin.low', null],
  ['pin.high', null],
  ['pin.over', null],
] as const
const needleKinds = [
  ['needle.bent', null],
  ['needle.stiff', stiffMs],
  ['needle.gone', null],
] as const

/** Needles of a strip far from both ends of the bed: for each column one that may be wrong, and one that is right. */
const middleNeedles = (strip: Strip, view: View): Needle[] => {
  const all = needlesOfStrip(strip, view)
  const middle = Math.floor(all.length / 2) - 3
  return all.slice(middle, middle + 6)
}

/** The places of a strip: itself, its columns, and a needle of each. What one needle of a column shows, any of it does. */
const partsOf = (strip: Strip, needles: readonly Needle[]): Part[] => [
  { kind: 'strip', ways: faultsAt(stripKinds, strip) },
  ...columnsOfStrip(strip).map((column): Part => ({
    kind: 'column',
    ways: faultsAt(pinKinds, column),
  })),
  ...needles.slice(0, 3).map((needle): Part => ({ kind: 'needle', ways: faultsAt(needleKinds, needle) })),
]

/** What a machine shows of some needles in all views, as a text. */
const shownBy = (faults: readonly Fault[], needles: readonly Needle[], views: readonly View[]): string =>
  views
    .map((view) => {
      const condition = conditionOf(scenarioIn(view, faults))
      const drive = passDrive(condition, view.pass)
      return needles.map((needle) => needleCode(condition, drive, needle)).join('')
    })
    .join(' ')

/** How many combinations of places, each in some way, are parted from each of their parts. */
export interface PartedCount {
  readonly places: readonly PlaceKind[]
  readonly parted: number
  readonly all: number
}

/** Every choice of so many of some things, in their order. */
const choicesOf = <Thing>(things: readonly Thing[], count: number): Thing[][] =>
  count === 0
    ? [[]]
    : things.flatMap((first, n) => choicesOf(things.slice(n + 1), count - 1).map((rest) => [first, ...rest]))

const waysOf = (parts: readonly Part[]): Fault[][] =>
  parts.reduce<Fault[][]>(
    (before, { ways }) => before.flatMap((faults) => ways.map((fault) => [...faults, fault])),
    [[]],
  )

/** Every part of some faults that leaves out one or more of them, none at all among them. */
const partsOfFaults = (faults: readonly Fault[]): Fault[][] =>
  Array.from({ length: 2 ** faults.length - 1 }, (_, set) => faults.filter((__, n) => set & (1 << n)))

/**
 * Which combinations of so many places within one strip some views part: what they show together differs from what each
 * part of them shows, and from a sound machine. Strips do not touch one another, so that what is so within
 * each strip is so across them.
 */
export const partedTogether = (views: readonly View[], count: number): PartedCount[] => {
  const counts = new Map<string, { places: PlaceKind[]; parted: number; all: number }>()
  for (const strip of allStrips) {
    const needles = middleNeedles(strip, at(views, 0))
    const known = new Map<string, string>()
    const shown = (faults: readonly Fault[]): string => {
      const key = faults.map(({ kind, at: place }) => `${kind} ${place.join()}`).join()
      let text = known.get(key)
      if (text === undefined) known.set(key, (text = shownBy(faults, needles, views)))
      return text
    }
    for (const parts of choicesOf(partsOf(strip, needles), count)) {
      const places = parts.map(({ kind }) => kind)
      const own = counts.get(places.join()) ?? { places, parted: 0, all: 0 }
      counts.set(places.join(), own)
      for (const faults of waysOf(parts)) {
        const whole = shown(faults)
        own.all++
        if (partsOfFaults(faults).every((some) => shown(some) !== whole)) own.parted++
      }
    }
  }
  return [...counts.values()]
}
