import { takenWithin } from '../mechanism/closed-forms.ts'
import type { Dimensions } from '../mechanism/dimensions.ts'
import { releaseOf, shiftAfter } from '../mechanism/release.ts'
import { leadOf } from '../mechanism/sweep.ts'
import { travelIn } from '../mechanism/travel.ts'
import { wornDimensions } from '../mechanism/wear.ts'
import { slowChances, wearChances } from './chances.ts'
import { keptFor } from './kept.ts'
import { Memo } from './memo.ts'
import { chanceOfPeak, type Peaks } from './peaks.ts'

/**
 * After how many of its strip's needles, beyond its own, a push that lasts longer brings nothing new. The third beyond is of
 * its own column again, which matters only where a push comes too late for its own needle.
 */
const mostLasting = 3

/**
 * The least peak in mm of a push that has its strip at `reach` when the presser lets go of a needle whose pin the sweep's
 * middle passed, or would have, `past` needles of travel before; `constant` is the strip's time constant in needles of travel.
 */
const peakToLast = (dimensions: Dimensions, past: number, constant: number, reach: number): number => {
  const { ratio, sweepThrow } = dimensions
  const within = takenWithin(dimensions)
  if (past < -within) return Infinity
  if (past <= within) return reach
  const left = (peak: number): number =>
    shiftAfter(
      dimensions,
      releaseOf(dimensions, sweepThrow, ratio * sweepThrow - peak, constant),
      past,
      constant,
    )
  let [low, high] = [0, ratio * sweepThrow]
  if (!(left(high) >= reach)) return Infinity
  for (let n = 0; n < 40; n++) {
    const middle = (low + high) / 2
    if (left(middle) < reach) low = middle
    else high = middle
  }
  return high
}

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
  /** By wear: the chance that a push suffices, so that it is any of them. */
  readonly sufficient: readonly number[]
}

const memoOf = keptFor<[Peaks], Memo<Lastings>>(() => new Memo<Lastings>(500))

/** How pushes last on slow strips in these kinds of looks. */
export const lastingsIn = (peaks: Peaks, kinds: readonly LookKind[]): Lastings => {
  const key = kinds.map(({ speed, early }) => `${speed} ${early}`).join()
  return memoOf(peaks).of(key, () => lastingsOf(peaks, kinds))
}

const lastingsOf = ({ dimensions, sufficient }: Peaks, kinds: readonly LookKind[]): Lastings => {
  const { strips } = dimensions
  const lead = leadOf(dimensions)
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
          Math.max(
            reach,
            peakToLast(dimensions, on * strips - lead + early, travelIn(dimensions, ms, speed), reach),
          ),
        ),
      )
      const edges = [...new Set([reach, ...needed.flat()])].filter(Number.isFinite).sort((a, b) => a - b)
      const above = edges.map((edge) => chanceOfPeak(dimensions, wear, edge))
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
  return { cases, chances, sufficient }
}
