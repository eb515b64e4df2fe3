import { dimensions } from '../mechanism/dimensions.ts'
import { at, entry } from '../mechanism/lookup.ts'
import { bitCount } from './bits.ts'
import type { Component, NeedleChances, StateNeedles } from './components.ts'
import type { DrawnMachine } from './draw-machines.ts'
import { type DrawnPasses, drawnPasses, mostAtOnce, soundPlaces } from './drawn-passes.ts'
import type { Look } from './looks.ts'
import { numbersFrom } from './seeded.ts'
import { bitsOfNeedles } from './needle-bits.ts'
import { sharedBits } from './shared-bits.ts'
import { dimensionsAt } from './view.ts'
import { wideBedOf } from './wide-bed.ts'

const { columns, strips } = dimensions

/** So many needles late, on average, are seen to be scattered; fewer look like a sound bed. */
const scattered = 3

/** What needles of a place are seen to do: none of them is selected, some, or all. */
const answers = 3

const answerAt = ({ all, some }: DrawnPasses, place: number, bit: number): number =>
  at(all, place) & bit ? 2 : at(some, place) & bit ? 1 : 0

/**
 * What a strip's needles are seen to do in a pass, as one number, beside a bed whose strips and columns are right: what
 * reaches the whole bed is weighed by itself.
 */
const stripAnswer = (passes: DrawnPasses, strip: number, bit: number, sound: number): number => {
  let answer = 0
  for (let place = strip; place < columns; place += strips) {
    const expected = sound & (1 << place) ? 2 : 0
    answer = answer * answers + Math.abs(answerAt(passes, place, bit) - expected)
  }
  return answer
}

const stripAnswers = answers ** (columns / strips)

/** Which of some beds a bed looks most like; the first where it looks like several. */
const nearest = (beds: readonly number[], all: number, some: number): number => {
  let [best, least] = [0, Infinity]
  for (const [n, bed] of beds.entries()) {
    const apart = bitCount((bed ^ all) & ~some)
    if (apart < least) [best, least] = [n, apart]
  }
  return best
}

/** What of a pass speaks for what reaches the whole bed: which such bed it looks most like, and whether needles are scattered. */
const wideAnswer = (passes: DrawnPasses, beds: readonly number[], n: number): number => {
  const bit = 1 << n
  let [all, some] = [0, 0]
  for (let place = 0; place < columns; place++) {
    const answer = answerAt(passes, place, bit)
    if (answer === 2) all |= 1 << place
    if (answer === 1) some |= 1 << place
  }
  return nearest(beds, all, some) * 4 + (at(passes.late, n) >= scattered ? 2 : 0) + (some === 0 ? 0 : 1)
}

/** What a look settles, in bits: of what reaches the whole bed, and of everything. */
export interface Settled {
  readonly wide: number
  readonly all: number
}

/** What passes are weighed by: drawn machines, what is wrong with each, and the needles still in doubt. */
export interface Weighing {
  readonly machines: readonly DrawnMachine[]
  readonly components: readonly Component[]
  readonly needles: readonly NeedleChances[]
  readonly byState: readonly StateNeedles[]
  readonly slip: number
  readonly columnOne: number
}

const bitsAtOnce = (
  weighing: Weighing,
  looks: readonly Look[],
  seed: number,
  known: readonly Map<string, number>[],
): Settled[] => {
  const { machines, components, byState } = weighing
  const next = numbersFrom(seed)
  const passes = machines.map((machine) => drawnPasses(machine, looks, next))
  const states = [...new Set(machines.map(({ bed }) => bed.state))]
  const soundBy = new Map(states.map((state) => [state, soundPlaces(wideBedOf(state, looks))]))
  const sounds = machines.map(({ bed }) => entry(soundBy, bed.state))
  const [wide, ...own] = components
  return looks.map(({ view }, n) => {
    const bit = 1 << n
    const beds = [...new Set([...soundBy.values()].map((places) => at(places, n)))]
    const ofWide = wide
      ? sharedBits(
          wide.labels,
          passes.map((one) => wideAnswer(one, beds, n)),
          4 * beds.length,
        )
      : 0
    const ofStrips = own.reduce(
      (sum, { labels }, strip) =>
        sum +
        sharedBits(
          labels,
          passes.map((one, m) => stripAnswer(one, strip, bit, at(at(sounds, m), n))),
          stripAnswers,
        ),
      0,
    )
    const ofNeedles = byState.reduce((sum, { state, share, needles }, m) => {
      const own = passes.filter((_, which) => at(machines, which).bed.state === state)
      if (own.length === 0) return sum
      const heldAt = Array.from(
        { length: columns },
        (_, place) => own.filter(({ all }) => (at(all, place) & bit) !== 0).length / own.length,
      )
      const offers = { heldAt, sorts: own.some(({ sorts }) => (sorts & bit) !== 0) }
      return (
        sum + share * bitsOfNeedles(needles, weighing, view.speed, dimensionsAt(view), offers, at(known, m))
      )
    }, 0)
    return { wide: ofWide, all: ofWide + ofStrips + ofNeedles }
  })
}

/**
 * What looks at the bed would settle, in bits each: the expected fall in entropy over strips with their columns, over
 * what reaches the whole bed, and over needles, each by what its own needles would show.
 */
export const bitsOfPasses = (weighing: Weighing, looks: readonly Look[], seed: number): Settled[] => {
  const known = weighing.byState.map(() => new Map<string, number>())
  return Array.from({ length: Math.ceil(looks.length / mostAtOnce) }, (_, n) =>
    bitsAtOnce(weighing, looks.slice(n * mostAtOnce, (n + 1) * mostAtOnce), seed, known),
  ).flat()
}
