import type { Dimensions } from '../mechanism/dimensions.ts'
import { normalCdf } from '../mechanism/normal.ts'
import { scatter, wornDimensions } from '../mechanism/wear.ts'
import { pivotChances, wearChances } from './chances.ts'
import { Memo } from './memo.ts'

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
export const chanceOfPeak = (dimensions: Dimensions, wear: number, shift: number): number => {
  const { sweepThrow, fullBite, pinHigh, ratio } = dimensions
  const { sweepEdge, lost } = wornDimensions(dimensions, wear)
  const deviation = scatter(wear)
  const pushOf = (height: number): number =>
    sweepThrow * Math.min(1, Math.max(0, (height - sweepEdge) / fullBite))
  if (wear === 0) return Number(ratio * pushOf(pinHigh) - lost >= shift)
  // Most pins of the rule are high enough for the whole push, whose chance is computed once.
  let [sum, last, chance] = [0, NaN, 0]
  for (const { z, weight } of points) {
    const push = ratio * pushOf(pinHigh + z * deviation.pin)
    if (push < shift) continue
    if (push !== last) [last, chance] = [push, normalCdf((push - shift - lost) / deviation.lost)]
    sum += weight * chance
  }
  return sum
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
const spreads = (dimensions: Dimensions): Float64Array[][] =>
  wearChances.map(({ wear }) => {
    const { reach, lost } = wornDimensions(dimensions, wear)
    const width = 0.02
    const bins: { peak: number; chance: number }[] = []
    const asMade = dimensions.ratio * dimensions.sweepThrow - lost
    if (wear > 0)
      for (let from = reach, above = chanceOfPeak(dimensions, wear, reach); above > 1e-9; from += width) {
        const next = chanceOfPeak(dimensions, wear, from + width)
        bins.push({ peak: from + width / 2, chance: above - next })
        above = next
      }
    else if (asMade >= reach) bins.push({ peak: asMade, chance: 1 })
    return pivotChances.map(({ mm }) => {
      const onto = new Float64Array(certainties.length)
      for (const { peak, chance } of bins) spread(mm === 0 ? 1 : normalCdf((peak - reach) / mm), chance, onto)
      return onto
    })
  })

const sure = certainties.length - 1

/** The point of the grid nearest to the mean certainty of pushes that suffice, which have these shares of it. */
const meanOf = (shares: Float64Array): number => {
  const whole = shares.reduce((sum, one) => sum + one, 0)
  if (whole === 0) return sure
  const mean = shares.reduce((sum, one, n) => sum + one * certainties[n]!, 0) / whole
  return certainties.reduce<number>(
    (best, one, n) => (Math.abs(one - mean) < Math.abs(certainties[best]! - mean) ? n : best),
    sure,
  )
}

/** How far pushes shift the strips of a machine of some dimensions, as wear scatters it and loose pivots take of it. */
export class Peaks {
  readonly dimensions: Dimensions
  /** By wear: the chance that a push suffices. */
  readonly sufficient: readonly number[]
  private spreads: readonly (readonly Float64Array[])[] | null = null
  private means: readonly (readonly number[])[] | null = null

  constructor(dimensions: Dimensions) {
    this.dimensions = dimensions
    this.sufficient = wearChances.map(({ wear }) =>
      chanceOfPeak(dimensions, wear, wornDimensions(dimensions, wear).reach),
    )
  }

  /** By wear and by looseness, in the order of their tables: how likely a push has each chance of `certainties`. */
  certaintyChances(): readonly (readonly Float64Array[])[] {
    return (this.spreads ??= spreads(this.dimensions))
  }

  /** The point of `certainties` nearest to the mean certainty of pushes that suffice, with this wear and these pivots. */
  meanCertainty(wear: number, pivots: number): number {
    if (pivots === 0) return sure
    this.means ??= this.certaintyChances().map((byPivots) => byPivots.map(meanOf))
    return this.means[wear]![pivots]!
  }
}

/** Those of the machines of late, by what their dimensions are. */
const known = new Memo<Peaks>(8)

/** The peaks of a machine of these dimensions. */
export const peaksOf = (dimensions: Dimensions): Peaks =>
  known.of(Object.values(dimensions).join(), () => new Peaks(dimensions))
