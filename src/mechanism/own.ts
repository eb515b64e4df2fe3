import { cams, type Dimensions, dimensions } from './dimensions.ts'
import { bedLengths } from './indices.ts'

/** What a measured value counts: lengths in mm or in needles, times in ms, or a bare number. */
type OwnUnit = 'mm' | 'needles' | 'ms' | 'ratio'

interface OwnDimension {
  readonly unit: OwnUnit
  /** The least and the most that the model works with; wider than any machine of this class. */
  readonly least: number
  readonly most: number
}

/**
 * The dimensions that a machine may have of its own, in the order of the specification's table, each with its limits.
 * The counts of columns and strips are those of the class, and the speed is no dimension.
 */
export const ownDimensions = {
  pitch: { unit: 'mm', least: 3, most: 10 },
  hole: { unit: 'mm', least: 1, most: 6 },
  pin: { unit: 'mm', least: 0.5, most: 5 },
  pinHigh: { unit: 'mm', least: 0, most: 12 },
  pinLow: { unit: 'mm', least: 0, most: 12 },
  sweepEdge: { unit: 'mm', least: 0, most: 12 },
  fullBite: { unit: 'mm', least: 0.05, most: 3 },
  sweepThrow: { unit: 'mm', least: 0, most: 8 },
  sweepFlat: { unit: 'needles', least: 0, most: 4 },
  sweepRamp: { unit: 'needles', least: 0.2, most: 4 },
  ratio: { unit: 'ratio', least: 0.1, most: 5 },
  lost: { unit: 'mm', least: 0, most: 8 },
  reach: { unit: 'mm', least: 0.05, most: 8 },
  letGo: { unit: 'mm', least: 0, most: 8 },
  preload: { unit: 'mm', least: 0.05, most: 5 },
  stripReturn: { unit: 'ms', least: 0.3, most: 70_000 },
  presserRight: { unit: 'mm', least: 0, most: 8 },
  presserLeft: { unit: 'mm', least: 0, most: 8 },
  catchDepth: { unit: 'mm', least: 0, most: 8 },
  gate1: { unit: 'mm', least: 0, most: 8 },
  gate2: { unit: 'mm', least: 0, most: 10 },
  buttReturn: { unit: 'ms', least: 0.2, most: 500 },
  // Both gates have passed the last needle when the carriage is at the turn mark.
  gateLag: {
    unit: 'needles',
    least: 0.2,
    most: dimensions.turnMark - cams.gate1Length - cams.gate2Length,
  },
} as const satisfies Partial<Record<keyof Dimensions, OwnDimension>>

export type OwnName = keyof typeof ownDimensions

/** The names of `ownDimensions`, in their order. */
export const ownNames = Object.keys(ownDimensions) as readonly OwnName[]

type OwnValues = { readonly [Name in OwnName]?: number }

/** What was measured of a machine, each within its limits; what is left out is as in the training machine. */
export interface Own extends OwnValues {
  /** How many needles the bed has; one of which `isBedLength` is true. */
  readonly needles?: number
}

/** Whether a bed may have so many needles: half of them are at each side of its middle. */
export const isBedLength = (needles: number): boolean =>
  needles >= bedLengths.least && needles <= bedLengths.most && needles % 2 === 0

/** A machine of which nothing was measured: the training machine. */
export const nothingOwn: Own = {}

const known = new WeakMap<Own, Dimensions>()

/** All dimensions of a machine of which so much was measured, in the units of `dimensions`. */
export const dimensionsOf = (own: Own): Dimensions => {
  let found = known.get(own)
  if (!found) known.set(own, (found = { ...dimensions, ...own }))
  return found
}

/** Two dimensions of which the first must be less than the second, or no machine can have them. */
export const ownOrders = [
  ['pin', 'hole'],
  ['pinLow', 'pinHigh'],
  ['letGo', 'reach'],
  ['gate1', 'gate2'],
] as const satisfies readonly (readonly [OwnName, OwnName])[]

/** The pairs of `ownOrders` that a machine of which so much was measured has the wrong way round. */
export const disordered = (own: Own): (typeof ownOrders)[number][] => {
  const all = dimensionsOf(own)
  return ownOrders.filter(([less, more]) => all[less] >= all[more])
}

/** Measured values in their one order, without those that are as the training machine's. */
export const canonicalOwn = (own: Own): Own => {
  const kept = ownNames.flatMap((name) => {
    const value = own[name]
    return value === undefined || value === dimensions[name] ? [] : [[name, value] as const]
  })
  const { needles = dimensions.needles } = own
  const bed = needles === dimensions.needles ? {} : { needles }
  return kept.length === 0 && needles === dimensions.needles
    ? nothingOwn
    : { ...bed, ...Object.fromEntries(kept) }
}
