import { type Fault, faultId } from '../mechanism/fault.ts'
import { startRun } from '../mechanism/pass.ts'
import type { Dictionary, Entry } from './dictionary.ts'
import { type Letters, lettersOf } from './letters.ts'
import { slips } from './priors.ts'
import { rank } from './rank.ts'
import type { TestCard } from './test-card.ts'
import { scenarioIn } from './view.ts'

/** How often what was broken was found. */
export interface Score {
  readonly tried: number
  readonly found: number
  /** What was not found, by ids. */
  readonly missed: readonly string[]
}

/** The beds that the whole model leaves in a dictionary's views, with these faults, noted without error. */
export const bedsOf = ({ views }: Dictionary, faults: readonly Fault[], seed: number): Letters[] =>
  views.map((view) => lettersOf(startRun({ ...scenarioIn(view, faults), seed }).passOf(view.pass)))

/** A stream of numbers in [0, 1) from a whole seed (the linear congruence of Numerical Recipes, mixed). */
const stream = (seed: number): (() => number) => {
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    const mixed = Math.imul(state ^ (state >>> 15), 0x85ebca6b) >>> 0
    return ((mixed ^ (mixed >>> 13)) >>> 0) / 0x100000000
  }
}

/** The same beds with each needle noted wrongly at this rate, as another letter. */
export const withSlips = (beds: readonly Letters[], rate: number, seed: number): Letters[] => {
  const next = stream(seed)
  const another = (letter: string): string => {
    const [one, other] = ['s', 'p', 'u'].filter((mark) => mark !== letter)
    return next() < 0.5 ? one! : other!
  }
  return beds.map((bed) => Array.from(bed, (letter) => (next() < rate ? another(letter) : letter)).join(''))
}

/** The ids of the likeliest answer, two at once joined by a plus; none where it is a sound machine or unknown. */
const topOf = (dictionary: Dictionary, beds: readonly Letters[]): Set<string> => {
  const [first] = rank(dictionary, { beds, slip: slips.rough })
  return new Set(
    first!.ways.map((way) =>
      way
        .map(({ id }) => id)
        .sort()
        .join(' + '),
    ),
  )
}

const scoreOf = (results: readonly { readonly id: string; readonly isFound: boolean }[]): Score => {
  const missed = results.filter(({ isFound }) => !isFound).map(({ id }) => id)
  return { tried: results.length, found: results.length - missed.length, missed }
}

/**
 * Breaks every single fault of the dictionary in turn, looks at the test card's passes, and counts how often the answer
 * on top is its own class, whole. Each class is noted once with its own slips: its faults leave the same beds.
 */
export const singlesFound = ({ dictionary, classes }: TestCard, rate: number, seed = 1): Score =>
  scoreOf(
    classes.flatMap((members, n) => {
      const exact = bedsOf(dictionary, [members[0]!.fault], seed)
      const top = topOf(dictionary, withSlips(exact, rate, seed * 10_000 + n))
      return members.map(({ id }) => ({ id, isFound: top.size === members.length && top.has(id) }))
    }),
  )

/** All pairs of a strip's fault and a pin's fault of a dictionary. */
export const stripAndPinPairs = ({ entries }: Dictionary): [Entry, Entry][] => {
  const of = (kind: string): Entry[] => entries.filter(({ fault }) => fault.kind.startsWith(kind))
  return of('strip.').flatMap((strip) => of('pin.').map((pin): [Entry, Entry] => [strip, pin]))
}

/** Breaks pairs of faults and counts how often the answer on top holds both. */
export const pairsFound = ({ dictionary }: TestCard, pairs: readonly (readonly [Entry, Entry])[]): Score =>
  scoreOf(
    pairs.map(([one, other]) => {
      const id = [one, other]
        .map(({ fault }) => faultId(fault))
        .sort()
        .join(' + ')
      return { id, isFound: topOf(dictionary, bedsOf(dictionary, [one.fault, other.fault], 1)).has(id) }
    }),
  )
