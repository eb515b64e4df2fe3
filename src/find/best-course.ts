import { speeds } from './battery.ts'
import { dictionaryOf, type Entry, isShown, signatureOf } from './dictionary.ts'
import { passMinutes } from './pass-time.ts'
import { entriesFor } from './entries.ts'
import { cheapestCover, type CoverSet } from './set-cover.ts'
import type { View } from './view.ts'
import type { CardPlace, Way } from '../mechanism/bed.ts'
import { everyHole } from '../mechanism/card.ts'
import { at } from '../mechanism/lookup.ts'
import type { Fault } from '../mechanism/fault.ts'
import { type CardAndPasses, kindAndPlace, type NotedPass, viewsOfQuery } from './query.ts'

/** The cheapest passes that prove a fault, and what no pass distinguishes from it. */
export interface BestCourse {
  readonly passes: readonly NotedPass[]
  /** Whether it is proved that no passes of those tried prove the fault in less time. */
  readonly isProved: boolean
  /** Faults that look the same in all passes tried. */
  readonly alike: readonly Fault[]
}

const ways: readonly Way[] = [1, -1]

/** Every pass that may be made, the plainest first: each row of the card, a blank one, one of all holes, and none, at each speed. */
const everyPass = (first: NotedPass): NotedPass[] =>
  [speeds.ordinary, speeds.slow, speeds.fast].flatMap((speed) => {
    const plain = { ...first, speed, needles: '' }
    const own = (first.card ?? []).map((_, n): NotedPass => ({
      ...plain,
      row: n + 1,
      way: n % 2 === 0 ? 1 : -1,
    }))
    const others = [[0], [everyHole], null].flatMap((card) =>
      ways.map((way): NotedPass => ({ ...plain, card, row: card ? 1 : null, way })),
    )
    return [...own, ...others]
  })

/** What shows the same as a fault in passes: other faults, whatever their amount, and perhaps a sound machine. */
interface Confused {
  readonly faults: readonly Fault[]
  readonly isSound: boolean
}

/** What the fault meant may be taken for after these views, among these faults. */
const confusedIn = (meant: Fault, views: readonly View[], among: readonly Fault[]): Confused => {
  const own = kindAndPlace(meant)
  const [entry, ...others] = dictionaryOf(views, [meant, ...among]).entries
  return {
    faults: others.flatMap(({ key, fault }) =>
      key === entry?.key && kindAndPlace(fault) !== own ? [fault] : [],
    ),
    isSound: entry !== undefined && !isShown(entry),
  }
}

/** What a fault may be taken for after a query's passes. */
export const confusedWith = (fault: Fault, query: CardAndPasses): Confused => {
  const views = viewsOfQuery(query)
  return confusedIn(fault, views, entriesFor(views))
}

/** Each pass with what it distinguishes from the fault; the number after the last of the faults is a sound machine. */
const meansOf = (
  meant: Fault,
  views: readonly View[],
  left: Confused,
  costs: readonly number[],
): CoverSet[] => {
  const [entry, ...others] = dictionaryOf(views, [meant, ...left.faults]).entries
  return costs.map((cost, n): CoverSet => {
    const keyOf = ({ shown }: Entry): string => signatureOf(shown.slice(n, n + 1))
    const own = entry ? keyOf(entry) : ''
    const parts = others.flatMap((other, which) => (keyOf(other) === own ? [] : [which]))
    return { cost, parts: new Set(left.isSound && own !== '' ? [...parts, others.length] : parts) }
  })
}

/**
 * The best course to a fault for one who knows it: the cheapest passes after a first one, each made by itself, after
 * which every other single fault that any of them distinguishes from it is ruled out, and a sound machine too.
 */
export const bestCourse = (fault: Fault, first: NotedPass, { columnOne }: CardPlace): BestCourse => {
  const passes = everyPass(first)
  const viewsAlone = (pass: NotedPass): View[] =>
    viewsOfQuery({ card: first.card, passes: [pass], columnOne })
  const views = passes.flatMap(viewsAlone)
  const left = confusedIn(fault, viewsAlone(first), entriesFor(views))
  const means = meansOf(
    fault,
    views,
    left,
    passes.map((pass) => passMinutes(pass, first.card)),
  )
  const { taken, isProved } = cheapestCover(means)
  const parted = new Set(means.flatMap(({ parts }) => [...parts]))
  const alike = new Map(
    left.faults.flatMap((other, n) => (parted.has(n) ? [] : [[kindAndPlace(other), other] as const])),
  )
  return {
    passes: [first, ...taken.map((n) => at(passes, n))],
    isProved,
    alike: [...alike.values()],
  }
}
