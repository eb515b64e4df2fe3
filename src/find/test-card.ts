import { usualPlace } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { speeds } from './battery.ts'
import { rowsForCodes, rowsForFaults, rowsToSeparate } from './codes.ts'
import { classesOf, type Dictionary, dictionaryOf, type Entry, isShown } from './dictionary.ts'
import { drawCard } from './draw-card.ts'
import { everyView, machineFaults } from './exhaustive-views.ts'
import type { View } from './view.ts'

/** A short card that shows faults and parts them, with the passes to look at. */
export interface TestCard {
  readonly card: Card
  /** The card from end to end at each of these speeds in turn, in mm/s, without a break; then one pass without it. */
  readonly runs: readonly number[]
  readonly dictionary: Dictionary
  readonly classes: readonly (readonly Entry[])[]
  /** Faults that show in none of the passes. */
  readonly hidden: readonly Entry[]
  /** Classes that there would be if the card parted whatever any card, way and speed part. */
  readonly most: number
  /** The fewest rows that any card can do with: a card with as many is proved the shortest. */
  readonly fewest: number
  /** For comparison: the fewest rows that give each column a code of its own, and that separate all columns. */
  readonly forCodes: number
  readonly toSeparate: number
}

/** How far the search has come: cards tried, and the classes of the best beside the most there can be. */
export interface Progress {
  readonly tried: number
  readonly rows: number
  readonly classes: number
  readonly most: number
}

const { columns, strips } = dimensions

/** Runs through the card: at the ordinary speed, by a slow hand that feels whether all runs freely, and then fast until all is shown enough. */
const runSpeeds = [
  speeds.ordinary,
  speeds.slow,
  speeds.fast,
  speeds.fast,
  speeds.ordinary,
  speeds.fast,
] as const
const leastRuns = 3

/** A fault should change at least so many needles, or slips of the pen would hide it. */
const enough = 4

/** Cards tried of each length before a longer one is. */
const triesALength = 12
const mostRows = 8

const viewsWith = (card: Card, runs: readonly number[]): View[] => [
  ...runs.flatMap((speed, run) =>
    card.map((_, n): View => ({ card, pass: run * card.length + n + 1, speed, shift: 0, ...usualPlace })),
  ),
  { card: null, pass: 1, speed: speeds.ordinary, shift: null, ...usualPlace },
]

/** Needles that an entry changes in all the views; those late by chance count as they come on average. */
const needlesShown = ({ shown }: Entry): number =>
  shown.reduce((sum, { changed, chance }) => sum + changed.length + (chance * dimensions.needles) / 2, 0)

/**
 * The machine's own classes, one for each place of the card, and two for each turn: short of the mark or missed by the
 * pawl, which look the same, and moved on by two rows.
 */
const mostClasses = (ofMachine: number, card: Card, runs: readonly number[]): number =>
  ofMachine + card.length * columns + 2 * (runs.length * card.length - 1)

const trial = (ofMachine: number, card: Card, runs: readonly number[]): TestCard => {
  const dictionary = dictionaryOf(viewsWith(card, runs))
  return {
    card,
    runs,
    dictionary,
    classes: classesOf(dictionary),
    hidden: dictionary.entries.filter((entry) => !isShown(entry)),
    most: mostClasses(ofMachine, card, runs),
    fewest: rowsForFaults(columns / strips),
    forCodes: rowsForCodes(columns),
    toSeparate: rowsToSeparate(columns),
  }
}

/** Classes that a card leaves unparted, and faults that it hides: none is best. */
const lacking = ({ most, classes, hidden }: TestCard): number => most - classes.length + hidden.length

/** Runs the card through again until every fault shows on enough needles. */
const runEnough = (ofMachine: number, found: TestCard): TestCard => {
  let runs = found.runs
  let longer = found
  while (
    runs.length < runSpeeds.length &&
    longer.dictionary.entries.some((one) => needlesShown(one) < enough)
  ) {
    runs = runSpeeds.slice(0, runs.length + 1)
    longer = trial(ofMachine, found.card, runs)
  }
  return longer
}

/**
 * Computes a test card, telling after each try how far it has come; whoever asks may stop. Shortest cards are tried
 * first, so that the first which shows every fault and parts all that can be parted is the shortest found; where it has
 * as few rows as any card can have, it is proved so. Should none of 8 rows do, the best one is kept with what it lacks.
 */
export function* computeTestCard(seed = 1): Generator<Progress, TestCard> {
  const ofMachine = classesOf(dictionaryOf(everyView, machineFaults())).length
  const runs = runSpeeds.slice(0, leastRuns)
  let best: TestCard | null = null
  let tried = 0
  for (let rows = rowsForFaults(columns / strips); rows <= mostRows; rows++)
    for (let n = 0; n < triesALength; n++) {
      const next = trial(ofMachine, drawCard(rows, seed * 1000 + tried), runs)
      if (!best || lacking(next) < lacking(best)) best = next
      tried++
      yield { tried, rows, classes: best.classes.length, most: best.most }
      if (lacking(best) === 0) return runEnough(ofMachine, best)
    }
  return runEnough(ofMachine, best!)
}

/** The test card, computed to the end. */
export const testCard = (seed = 1): TestCard => {
  const search = computeTestCard(seed)
  let step = search.next()
  while (!step.done) step = search.next()
  return step.value
}
