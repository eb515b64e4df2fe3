import { dimensions } from './dimensions.ts'
import { bedLengths } from './indices.ts'
import type { Slopes } from './margin-slopes.ts'
import { type Own, dimensionsOf, type OwnName } from './own.ts'
import { constantsHome } from './release.ts'
import { fullShift } from './rocker.ts'

/** With what something is measured, and how exact that is if nothing better is known, in the measurement's unit. */
const tools = {
  rule: 0.5,
  calliper: 0.05,
  'feeler gauge': 0.03,
  eye: 0.3,
  'stop watch': 200,
  count: 0,
} as const

type Tool = keyof typeof tools

interface Measurement {
  readonly unit: 'mm' | 'needles' | 'ms'
  readonly tool: Tool
  /** How exact it is usually, in its unit. */
  readonly exact: number
  readonly least: number
  readonly most: number
}

/**
 * What can be measured on a machine with a calliper, feeler gauges, a rule or a stop watch, each with its limits. The
 * exactness of each tool is common practice, from memory. `needles` is how many the bed has; `slack` is the belt's play, and
 * `timing` how far to the right the belt has the sweep of where it belongs; `home` is how long a strip takes to
 * come back that is pushed over by hand and let go; `shift` is how far it can be pushed so.
 */
export const measurements = {
  needles: { unit: 'needles', tool: 'count', exact: tools.count, ...bedLengths },
  pitch: { unit: 'mm', tool: 'rule', exact: tools.rule / 20, least: 3, most: 10 },
  pinHigh: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 12 },
  pinLow: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 12 },
  sweepEdge: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 12 },
  sweepThrow: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: dimensions.lost + 0.1, most: 8 },
  slack: { unit: 'needles', tool: 'eye', exact: tools.eye, least: 0, most: 24 },
  timing: { unit: 'needles', tool: 'eye', exact: tools.eye, least: -12, most: 12 },
  shift: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0.1, most: 8 },
  home: { unit: 'ms', tool: 'stop watch', exact: tools['stop watch'], least: 1, most: 10_000 },
  // The shift at which a catch lets go is not measured, and is less than that at which it takes.
  reach: {
    unit: 'mm',
    tool: 'feeler gauge',
    exact: tools['feeler gauge'],
    least: dimensions.letGo + 0.05,
    most: 8,
  },
  presserRight: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 8 },
  presserLeft: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 8 },
  catchDepth: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 8 },
  gate1: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 8 },
  gate2: { unit: 'mm', tool: 'calliper', exact: tools.calliper, least: 0, most: 10 },
} as const satisfies Readonly<Record<string, Measurement>>

export type MeasurementName = keyof typeof measurements
export const measurementNames = Object.keys(measurements) as readonly MeasurementName[]

/** What was measured, each in its own unit. */
export type Measured = { readonly [Name in MeasurementName]?: number }

/** The training machine's value of a measurement, or that of a machine of which so much is known. */
export const usualOf = (name: MeasurementName, own: Own = {}): number => {
  const all = dimensionsOf(own)
  if (name === 'slack' || name === 'timing') return 0
  if (name === 'shift') return fullShift(all)
  if (name !== 'home') return all[name]
  return all.stripReturn * constantsHome(all, fullShift(all))
}

/** Two measurements of which the first must be less than the second, or at most as large, or no machine can have them. */
export const measurementOrders = [
  ['pinLow', 'pinHigh'],
  ['shift', 'sweepThrow'],
  ['gate1', 'gate2'],
] as const satisfies readonly (readonly [MeasurementName, MeasurementName])[]

/** The pairs that are the wrong way round; what was not measured is as in the training machine. */
export const wrongOrders = (measured: Measured): (typeof measurementOrders)[number][] => {
  const own = ownOf(measured)
  return measurementOrders.filter(([less, more]) => {
    const [one, other] = [measured[less] ?? usualOf(less, own), measured[more] ?? usualOf(more, own)]
    return less === 'shift' ? one > other : one >= other
  })
}

/** How far a strip goes over by hand: as measured, or as the machine's other dimensions have it. */
const shiftIn = ({ shift, sweepThrow = dimensions.sweepThrow }: Measured): number =>
  shift ?? fullShift({ ...dimensions, sweepThrow })

/** The dimensions of a machine of which so much was measured; what the belt does is none of them. */
export const ownOf = (measured: Measured): Own => {
  const { shift, home, sweepThrow = dimensions.sweepThrow } = measured
  const same = Object.entries(measured).filter(
    ([name]) => !['slack', 'timing', 'shift', 'home'].includes(name),
  )
  return {
    ...(Object.fromEntries(same) as Own),
    ...(shift === undefined ? {} : { lost: dimensions.ratio * sweepThrow - shift }),
    ...(home === undefined ? {} : { stripReturn: home / constantsHome(dimensions, shiftIn(measured)) }),
  }
}

/** How the dimensions and the belt's play depend on what was measured, for the dimensions that depend on more than themselves. */
const dimensionSlopes = (measured: Measured): { readonly [Name in OwnName]?: MeasuredSlopes } => {
  const { ratio, preload } = dimensions
  const full = shiftIn(measured)
  const constants = constantsHome(dimensions, full)
  const byShift = -(measured.home ?? 0) / (constants ** 2 * (full + preload))
  return {
    ...(measured.shift === undefined ? {} : { lost: { shift: -1, sweepThrow: ratio } }),
    ...(measured.home === undefined
      ? {}
      : {
          stripReturn: {
            home: 1 / constants,
            ...(measured.shift === undefined ? { sweepThrow: ratio * byShift } : { shift: byShift }),
          },
        }),
  }
}

/** By how much something grows for each unit that a measurement has more; nought for those left out. */
export type MeasuredSlopes = { readonly [Name in MeasurementName]?: number }

/** The slopes of a margin by what was measured, from those by the machine's dimensions; what was not measured has none. */
export const measuredSlopes = (slopes: Slopes, measured: Measured): MeasuredSlopes => {
  const through = dimensionSlopes(measured)
  const all: { [Name in MeasurementName]?: number } = {}
  const add = (name: MeasurementName, slope: number): void => {
    if (measured[name] !== undefined && slope !== 0) all[name] = (all[name] ?? 0) + slope
  }
  for (const name of measurementNames)
    if (name !== 'needles' && name !== 'shift' && name !== 'home') add(name, slopes[name] ?? 0)
  for (const [own, parts] of Object.entries(through) as [OwnName, MeasuredSlopes][])
    for (const [name, slope] of Object.entries(parts) as [MeasurementName, number][])
      add(name, (slopes[own] ?? 0) * slope)
  return all
}

/** How far a sum may be out whose parts may be out by so much each, in their one unit. */
export interface Uncertainty {
  /** The root of the sum of squares: parts that are out by chance, each on its own. */
  readonly likely: number
  /** The sum: all parts out by as much as they may be, all the same way. */
  readonly worst: number
}

/** How parts that may be out add up: published rules of tolerance stack-ups. */
export const stackUp = (parts: readonly number[]): Uncertainty => ({
  likely: Math.hypot(...parts),
  worst: parts.reduce((sum, part) => sum + Math.abs(part), 0),
})
