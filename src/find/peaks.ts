import { dimensions } from '../mechanism/dimensions.ts'
import { normalCdf } from '../mechanism/normal.ts'
import { releaseOf, shiftAfter } from '../mechanism/release.ts'
import { neededPush } from '../mechanism/rocker.ts'
import { leadOf, windowOfShare } from '../mechanism/sweep.ts'
import { travelIn } from '../mechanism/travel.ts'
import { scatter, wornDimensions } from '../mechanism/wear.ts'
import { pivotChances, slowChances, wearChances } from './chances.ts'

const { strips, sweepThrow, fullBite, pinHigh, ratio } = dimensions
const lead = leadOf(dimensions)

/**
 * After how many of its strip's needles, beyond its own, a push that lasts longer brings nothing new. The third beyond is of
 * its own column again, which matters only where a push comes too late for its own needle.
 */
const mostLasting = 3

/** Points and weights of Simpson's rule over a normal distribution, to seven deviations each side. */
const points = (() => {
  const [steps, width] = [280, 14 / 280]
  return Array.from({ length: steps + 1 }, (_, n) => {
    const z = -7 + n * width
    const simpson = n === 0 || n === steps ? 1 : n % 2 === 1 ? 4 : 2
    return { z, weight: (((simpson * width) / 3) * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI) }
  })
})()

/** Chance that a sound pin and rocker of a machine with this wear shift their strip by at least `shift` mm. */
const chanceOfPeak = (wear: number, shift: number): number => {
  const { sweepEdge, lost } = wornDimensions(dimensions, wear)
  const deviation = scatter(wear)
  const pushOf = (height: number): number =>
    sweepThrow * Math.min(1, Math.max(0, (height - sweepEdge) / fullBite))
  if (wear === 0) return Number(ratio * pushOf(pinHigh) - lost >= shift)
  return points.reduce((sum, { z, weight }) => {
    const push = ratio * pushOf(pinHigh + z * deviation.pin)
    return push < shift ? sum : sum + weight * normalCdf((push - shift - lost) / deviation.lost)
  }, 0)
}

/**
 * The least peak in mm of a push that has its strip at `reach` when the presser lets go of a needle whose pin the sweep's
 * middle passed, or would have, `past` needles of travel before; `constant` is the strip's time constant in needles of travel.
 */
const peakToLast = (past: number, constant: number, reach: number): number => {
  if (past < -takenWithin) return Infinity
  if (past <= takenWithin) return reach
  const left = (peak: number): number =>
    shiftAfter(
      dimensions,
      releaseOf(dimensions, sweepThrow, ratio * sweepThrow - peak, constant),
      past,
      constant,
    )
  let [low, high] = [0, ratio * sweepThrow]
  if (left(high) < reach) return Infinity
  for (let n = 0; n < 40; n++) {
    const middle = (low + high) / 2
    if (left(middle) < reach) low = middle
    else high = middle
  }
  return high
}

/** How close to the sweep's middle, in needles, a strip that follows its rocker is at the catches' reach. */
const takenWithin = windowOfShare(dimensions, neededPush(dimensions) / sweepThrow)

/** What distinguishes one look from another where strips are slow: its speed in mm/s, and how early the sweep is, in needles. */
export interface LookKind {
  readonly speed: number
  readonly early: number
}

/** To which needles of its strip a push offers a hold, by kind of look: bit n for the needle n times eight further on. */
export type Lasting = readonly number[]

/** The ways in which a push may turn out on a slow strip, and how likely each is. */
export interface Lastings {
  /** Each case that is possible. */
  readonly cases: readonly Lasting[]
  /** By wear and by slowness, in the order of their tables: the chance of each case. */
  readonly chances: readonly (readonly Float64Array[])[]
}

/** By wear: the chance that a push suffices. */
const sufficient = wearChances.map(({ wear }) => chanceOfPeak(wear, wornDimensions(dimensions, wear).reach))
export const sufficientChances = (): readonly number[] => sufficient

const known = new Map<string, Lastings>()

/** How pushes last on slow strips in these kinds of looks. */
export const lastingsIn = (kinds: readonly LookKind[]): Lastings => {
  const key = kinds.map(({ speed, early }) => `${speed} ${early}`).join()
  const found = known.get(key)
  if (found) return found
  const cases: Lasting[] = []
  const indexOf = (lasting: Lasting): number => {
    const index = cases.findIndex((one) => one.join() === lasting.join())
    return index >= 0 ? index : cases.push(lasting) - 1
  }
  const listed = wearChances.map(({ wear }) =>
    slowChances.map(({ ms }) => {
      const { reach } = wornDimensions(dimensions, wear)
      const needed = kinds.map(({ speed, early }) =>
        Array.from({ length: mostLasting + 1 }, (_, on) =>
          Math.max(reach, peakToLast(on * strips - lead + early, travelIn(dimensions, ms, speed), reach)),
        ),
      )
      const edges = [...new Set([reach, ...needed.flat()])].filter(Number.isFinite).sort((a, b) => a - b)
      const above = edges.map((edge) => chanceOfPeak(wear, edge))
      return edges.flatMap((edge, n) => {
        const chance = (above[n] ?? 0) - (above[n + 1] ?? 0)
        const lasting = needed.map((each) => {
          const bits = each.reduce((all, one, on) => (one <= edge ? all | (1 << on) : all), 0)
          return bits & 1 ? bits & ~(1 << mostLasting) : bits
        })
        return chance > 1e-12 ? [{ index: indexOf(lasting), chance }] : []
      })
    }),
  )
  const chances = listed.map((byMs) =>
    byMs.map((list) => {
      const all = new Float64Array(cases.length)
      for (const { index, chance } of list) all[index] = (all[index] ?? 0) + chance
      return all
    }),
  )
  const lastings = { cases, chances }
  known.set(key, lastings)
  return lastings
}

/** Chances that a push under a hole suffices this time, on a grid: loose pivots are summed over it; the last is certain. */
export const certainties = [0.5, 0.6, 0.7, 0.79, 0.86, 0.92, 0.96, 0.985, 1] as const

/** Shares of a chance between 0.5 and 1 on the two points of the grid beside it. */
const spread = (chance: number, share: number, onto: Float64Array): void => {
  const upper = certainties.findIndex((point) => point >= chance)
  if (upper <= 0) {
    onto[Math.max(0, upper)] = (onto[Math.max(0, upper)] ?? 0) + share
    return
  }
  const [low, high] = [certainties[upper - 1] ?? 0, certainties[upper] ?? 1]
  const part = (chance - low) / (high - low)
  onto[upper - 1] = (onto[upper - 1] ?? 0) + share * (1 - part)
  onto[upper] = (onto[upper] ?? 0) + share * part
}

/** By wear and by looseness, in the order of their tables: how likely a push has each chance of the grid. */
const spreads = (): Float64Array[][] =>
  wearChances.map(({ wear }) => {
    const { reach } = wornDimensions(dimensions, wear)
    const width = 0.02
    const bins: { peak: number; chance: number }[] = []
    if (wear === 0) bins.push({ peak: ratio * sweepThrow - wornDimensions(dimensions, 0).lost, chance: 1 })
    else
      for (let from = reach, above = chanceOfPeak(wear, reach); above > 1e-9; from += width) {
        const next = chanceOfPeak(wear, from + width)
        bins.push({ peak: from + width / 2, chance: above - next })
        above = next
      }
    return pivotChances.map(({ mm }) => {
      const onto = new Float64Array(certainties.length)
      for (const { peak, chance } of bins) spread(mm === 0 ? 1 : normalCdf((peak - reach) / mm), chance, onto)
      return onto
    })
  })

let spreadsKnown: Float64Array[][] | null = null
export const certaintyChances = (): readonly (readonly Float64Array[])[] => (spreadsKnown ??= spreads())

const sure = certainties.length - 1

/** The point of the grid nearest to the mean certainty of pushes that suffice. */
const meanOf = (wear: number, pivots: number): number => {
  if (pivots === 0) return sure
  const share = certaintyChances()[wear]![pivots]!
  const whole = share.reduce((sum, one) => sum + one, 0) || 1
  const mean = share.reduce((sum, one, n) => sum + one * certainties[n]!, 0) / whole
  return certainties.reduce<number>(
    (best, one, n) => (Math.abs(one - mean) < Math.abs(certainties[best]! - mean) ? n : best),
    sure,
  )
}

let meansKnown: number[][] | null = null

/** The point of the grid nearest to the mean certainty of pushes that suffice, with this wear and these pivots. */
export const meanCertainty = (wear: number, pivots: number): number =>
  (meansKnown ??= wearChances.map((_, w) => pivotChances.map((__, p) => meanOf(w, p))))[wear]![pivots]!
