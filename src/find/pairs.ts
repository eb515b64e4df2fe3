import type { Strip } from '../mechanism/indices.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { contradict } from '../mechanism/fault.ts'
import { needlesOfStrip } from '../mechanism/bed.ts'
import type { Dictionary, Entry } from './dictionary.ts'
import type { Reach } from './entries.ts'
import { changeGain, type Observation } from './evidence.ts'
import { type Setting, type Shown, shownByAll } from './shown.ts'
import { gainOfAll, type FaultClass } from './fault-class.ts'

/** Two faults at once: every way in which one of the first and one of the second can be so together. */
export interface Pair {
  readonly ways: readonly (readonly [Entry, Entry])[]
  readonly shown: readonly Shown[]
  /** Product of the two weights. */
  readonly weight: number
  readonly gain: number
}

/** How many faults are tried with one another, the likeliest first. */
const most = { apart: 150, chance: 40, leaders: 10, wide: 6 } as const

const reachOfClass = ({ entries }: FaultClass): Reach => entries[0]!.reach

const stripOfReach = (faultClass: FaultClass): number | null => {
  const reach = reachOfClass(faultClass)
  return reach.of === 'strip' || reach.of === 'needle' ? reach.strip : null
}

const byPromise = (one: FaultClass, other: FaultClass): number =>
  other.gain + Math.log(other.weight) - one.gain - Math.log(one.weight)

const promising = (faultClasses: readonly FaultClass[], count: number): FaultClass[] =>
  [...faultClasses].sort(byPromise).slice(0, count)

const waysOf = (one: FaultClass, other: FaultClass): [Entry, Entry][] =>
  one.entries.flatMap((a) =>
    other.entries.flatMap((b): [Entry, Entry][] => (contradict(a.fault, b.fault) ? [] : [[a, b]])),
  )

const pairOf = (one: FaultClass, other: FaultClass, shown: readonly Shown[], gain: number): Pair => ({
  ways: waysOf(one, other),
  shown,
  weight: one.weight * other.weight,
  gain,
})

/** Two predictions that touch no needle in common, as one; late needles are late by the one that has a chance. */
const together = (one: readonly Shown[], other: readonly Shown[]): Shown[] =>
  one.map(({ changed, chance }, n) => {
    const second = other[n]!
    return {
      changed: Uint16Array.from([...changed, ...second.changed]).sort(),
      chance: Math.max(chance, second.chance),
    }
  })

/** The least by which both of two faults must make the evidence likelier, as a logarithm, to be worth a pair. */
const leastGain = 1

/** Pairs that lag further than this behind the best, as a logarithm, could not matter. */
const worth = 25

const areApart = (one: FaultClass, other: FaultClass): boolean => {
  const [a, b] = [reachOfClass(one), reachOfClass(other)]
  if (a.of === 'needle' && b.of === 'needle') return a.needle !== b.needle
  return stripOfReach(one) !== stripOfReach(other)
}

/** Pairs that reach different needles, so that each shows just what it shows alone. Both must explain something. */
const apartPairs = (faultClasses: readonly FaultClass[]): Pair[] => {
  const able = promising(
    faultClasses.filter((faultClass) => faultClass.gain > leastGain && stripOfReach(faultClass) !== null),
    most.apart,
  )
  const scores = able.map(({ gain, weight }) => gain + Math.log(weight))
  // The likeliest come first, so the best pair with each is the first that reaches other needles.
  const best = able.map((one, n) => {
    const other = able.findIndex((faultClass, m) => m > n && areApart(one, faultClass))
    return other < 0 ? -Infinity : scores[n]! + scores[other]!
  })
  const enough = Math.max(...best, -Infinity) - worth
  const pairs: Pair[] = []
  for (const [n, one] of able.entries())
    for (let m = n + 1; m < able.length && scores[n]! + scores[m]! > enough; m++) {
      const other = able[m]!
      if (areApart(one, other))
        pairs.push(pairOf(one, other, together(one.shown, other.shown), one.gain + other.gain))
    }
  return pairs
}

/**
 * A worn retainer bar with another fault: every needle that then comes out plain may be late. The bar must explain
 * something by itself: no fault of one strip or row hides the needles that are late elsewhere.
 */
const chancePairs = (faultClasses: readonly FaultClass[], observations: readonly Observation[]): Pair[] => {
  const others = faultClasses.filter(
    (faultClass) => stripOfReach(faultClass) !== null || reachOfClass(faultClass).of === 'row',
  )
  return faultClasses
    .filter((faultClass) => reachOfClass(faultClass).of === 'chance' && faultClass.gain > leastGain)
    .flatMap((bar) => {
      const withBar = ({ shown }: FaultClass): number =>
        observations.reduce(
          (gain, observation, n) => gain + changeGain(observation, shown[n]!, bar.shown[n]!.chance),
          bar.gain,
        )
      return others
        .map((other) => ({ other, gain: withBar(other) }))
        .filter(({ gain }) => gain > bar.gain + leastGain)
        .sort((one, other) => other.gain - one.gain)
        .slice(0, most.chance)
        .map(({ other, gain }) => pairOf(bar, other, together(bar.shown, other.shown), gain))
    })
}

/** Pairs whose faults cost little to think of and whose effects need not be worked out anew. */
export const plainPairs = (
  faultClasses: readonly FaultClass[],
  observations: readonly Observation[],
): Pair[] => [...apartPairs(faultClasses), ...chancePairs(faultClasses, observations)]

const allNeedles = Array.from({ length: dimensions.needles }, (_, index) => index)

const worked = (
  one: FaultClass,
  other: FaultClass,
  needles: readonly number[],
  settings: readonly Setting[],
  observations: readonly Observation[],
): Pair[] => {
  const [way] = waysOf(one, other)
  if (!way) return []
  const shown = shownByAll(
    way.map(({ fault }) => fault),
    needles,
    settings,
  )
  const gain = gainOfAll(observations, shown)
  return gain > Math.max(one.gain, other.gain) + leastGain ? [pairOf(one, other, shown, gain)] : []
}

/** Pairs of faults of one strip, which meet there: worked out anew, on that strip's needles. */
export const stripPairs = (
  faultClasses: readonly FaultClass[],
  strip: Strip,
  { settings, place }: Pick<Dictionary, 'settings' | 'place'>,
  observations: readonly Observation[],
): Pair[] => {
  const onStrip = faultClasses.filter((faultClass) => stripOfReach(faultClass) === strip)
  const leading = promising(onStrip, most.leaders)
  const others = onStrip.filter(
    (faultClass) =>
      !leading.includes(faultClass) && (reachOfClass(faultClass).of === 'strip' || faultClass.gain > 0),
  )
  const needles = needlesOfStrip(strip, place)
  return leading.flatMap((one, n) =>
    [...leading.slice(n + 1), ...others].flatMap((other) =>
      areApart(one, other) ? [] : worked(one, other, needles, settings, observations),
    ),
  )
}

/** Pairs of which one changes the whole bed or the row that is read: worked out anew, on all needles. */
export const widePairs = (
  faultClasses: readonly FaultClass[],
  settings: readonly Setting[],
  observations: readonly Observation[],
): Pair[] => {
  const reaches = (faultClass: FaultClass, ...of: string[]): boolean =>
    of.includes(reachOfClass(faultClass).of)
  const wide = faultClasses.filter((faultClass) => reaches(faultClass, 'row', 'bed'))
  const leaders = promising(wide, most.wide)
  const others = [
    ...wide.filter((faultClass) => !leaders.includes(faultClass)),
    ...faultClasses.filter(
      (faultClass) => reaches(faultClass, 'strip') && !faultClass.entries[0]!.fault.kind.startsWith('card'),
    ),
  ]
  return leaders.flatMap((one, n) =>
    [...leaders.slice(n + 1), ...others].flatMap((other) =>
      worked(one, other, allNeedles, settings, observations),
    ),
  )
}
