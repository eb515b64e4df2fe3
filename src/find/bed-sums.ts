import type { Bed } from '../mechanism/bed.ts'
import type { ByHand } from './by-hand.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { lastOf } from '../mechanism/lookup.ts'
import { columnChances, readers, retainerMs } from './chances.ts'
import { type Followers, followersValue } from './column-sums.ts'
import { layoutOf } from './layout.ts'
import { Memo } from './memo.ts'
import { needleSumsOf } from './needle-sums.ts'
import { certainties, type Lastings, lastingsIn, type LookKind } from './peaks.ts'
import { eachSlowTerm, firstLasting, type SlowSetting } from './slow-sums.ts'
import {
  type BedSums,
  columnTotal,
  type FastSums,
  fastSumsOf,
  fastTotal,
  followersOf,
  overSets,
  stripColumns,
} from './strip-sums.ts'
import type { WideBed } from './wide.ts'

const { strips } = dimensions

/** How deep sums go: roughly, all but loose pivots, with those, or every combination however rare, but no loose pivots. */
export type Depth = 'rough' | 'firm' | 'loose' | 'whole'

/** What of a query the sums need beside its looks. */
export interface Setting {
  readonly bed: Bed
  /** Index of the needle of column 1. */
  readonly columnOne: number
  readonly slip: number
  /** By row of a card that was under the pins: the looks in which it was. */
  readonly rows: readonly number[]
  readonly byHand: ByHand
  /** A text that two settings share only where they differ in nothing but what was noted of needles. */
  readonly key: string
  /** By strip: what was noted of its needles, as a text. */
  readonly noted: readonly string[]
}

/** What a strip adds up to as sound, and by how slow it may be, each by itself. */
export interface StripValues {
  readonly fast: number
  readonly slow: readonly number[]
}

/** The sums of one strip for a bed in some state. */
interface StripSums {
  /** The log of what its needles' numbers are measured in. */
  readonly log: number
  /** What it adds up to in hidden states, as far as that was asked for before. */
  readonly values: Map<number, StripValues>
  /** How likely its notes are with no needle offered anything, and with each offered in every look. */
  readonly seized: number
  readonly over: number
  /** By certainty, and by set of columns that stay pushed over. */
  readonly fast: readonly (readonly FastSums[])[]
  /** The same as straight lines over the chances that pushes suffice: see `linesOf`. */
  readonly lines: Float64Array
  /** By certainty: by reader and the cases of its three columns. */
  readonly slow: readonly Float64Array[]
}

/** A bed in some state, with a retainer bar and dips in some state. */
export interface StateSums {
  readonly bed: WideBed
  readonly byHand: ByHand
  /** Index in `retainerMs`; -1 for a sound bar. */
  readonly retainer: number
  /** By certainty; the last is that of pivots that are not loose. */
  readonly sums: () => readonly BedSums[]
  readonly sets: readonly number[]
  readonly lastings: Lastings
  readonly kindOf: readonly number[]
  readonly strips: readonly StripSums[]
  /** The log of what the needles' numbers are measured in. */
  readonly log: number
  readonly depth: Depth
}

/** The distinct kinds of a bed's looks, and by look the index of its kind. */
const kindsOf = ({ looks, early }: WideBed): { kinds: LookKind[]; kindOf: number[] } => {
  const all = looks.map(({ view }, n) => ({ speed: view.speed, early: early[n]! }))
  const keyOf = ({ speed, early: by }: LookKind): string => `${speed} ${by}`
  const kinds = [...new Map(all.map((kind) => [keyOf(kind), kind])).values()].sort(
    (a, b) => a.speed - b.speed || a.early - b.early,
  )
  const keys = kinds.map(keyOf)
  return { kinds, kindOf: all.map((kind) => keys.indexOf(keyOf(kind))) }
}

const stripValue = (sums: BedSums, strip: number, offered: number): number =>
  stripColumns(strip).reduce(
    (product, column) => product * followersValue(sums.needles, followersOf(sums, column, 0), offered),
    1,
  )

/** The slow terms of a strip added up by reader and by the cases of its three columns. */
const slowTensor = (
  setting: SlowSetting,
  strip: number,
  sets: readonly number[],
  least: number,
): Float64Array => {
  const size = setting.cases.length + firstLasting
  const cube = size ** 3
  const tensor = new Float64Array(readers.length * cube)
  for (const over of sets)
    eachSlowTerm(setting, strip, over, least, ([one, two, three], value) => {
      for (const first of one.whens)
        for (const second of two.whens)
          for (const third of three.whens) {
            const place = (first.when * size + second.when) * size + third.when
            for (let r = 0; r < readers.length; r++)
              tensor[r * cube + place]! += first.chances[r]! * second.chances[r]! * third.chances[r]! * value
          }
    })
  return tensor
}

/** Strips that were summed before: enough for what one query asks for, and for what changes with some marks. */
const known = new Memo<StripSums>(4000)

/** How many numbers a line has: where it begins, and how steeply it rises with the share of each certainty. */
const lineSize = (count: number): number => 1 + count

/**
 * What a column adds up to is a straight line in the chance that its pushes suffice with each certainty. The lines of a
 * strip's columns, by set of columns that stay pushed over, column, and reader.
 */
const linesOf = (fast: readonly (readonly FastSums[])[]): Float64Array => {
  const [count, sets] = [fast.length, fast[0]!.length]
  const size = lineSize(count)
  const lines = new Float64Array(sets * 3 * readers.length * size)
  for (let set = 0; set < sets; set++)
    for (let n = 0; n < 3; n++)
      for (const [r, reader] of readers.entries()) {
        const from = ((set * 3 + n) * readers.length + r) * size
        for (let g = 0; g < count; g++) {
          const column = fast[g]![set]![n]!
          if (typeof column === 'number') {
            lines[from + 1 + g] = columnChances[reader].over * column
            continue
          }
          const none = columnTotal(column, reader, 0)
          lines[from] = none
          lines[from + 1 + g] = columnTotal(column, reader, 1) - none
        }
      }
  return lines
}

/**
 * The sums of a bed in some state. Rough ones leave out pins that stay pushed over, and what is rare on a slow strip;
 * only loose ones have loose pivots, and others one certainty of all pushes. `meets` is the chance that a dip still meets its catch.
 */
export const stateSumsOf = (
  setting: Setting,
  bed: WideBed,
  retainer: number,
  meets: number,
  depth: Depth,
  certainty = 1,
): StateSums => {
  const layout = layoutOf(setting.bed, setting.columnOne, bed.offset)
  const { kinds, kindOf } = kindsOf(bed)
  const lastings = lastingsIn(kinds)
  const ms = retainer < 0 ? 0 : retainerMs[retainer]!
  const isRough = depth === 'rough'
  const used = depth === 'loose' ? certainties : [certainty]
  const followers = new Map<number, Followers>()
  let made: readonly BedSums[] | null = null
  const sums = (): readonly BedSums[] =>
    (made ??= used.map((each): BedSums => ({
      bed,
      layout,
      followers,
      rows: setting.rows,
      byHand: setting.byHand,
      needles: needleSumsOf(bed, setting, ms, meets, each),
    })))
  const sets = isRough ? [0] : overSets
  const stripSums = (strip: number): StripSums => {
    const all = sums()
    const exact = lastOf(all)
    const fast = all.map((each) =>
      sets.map((over) => fastSumsOf(each, strip, over, isRough || each !== exact)),
    )
    const [seized, over] = [stripValue(exact, strip, 0), stripValue(exact, strip, -1)]
    const asked = fastTotal(fast.at(-1)![0]!, 'usual', 1)
    const least = Math.max(seized, over, asked) / 100
    const own = stripColumns(strip).flatMap((column) => layout.followers[column]!)
    return {
      log: own.reduce((sum, needle) => sum + exact.needles.logs[needle]!, 0),
      values: new Map(),
      seized,
      over,
      fast,
      lines: linesOf(fast),
      slow: all.map((each) =>
        slowTensor(
          {
            sums: each,
            cases: lastings.cases,
            kindOf,
            isRough: isRough || each !== exact,
            isWhole: depth === 'whole',
          },
          strip,
          each === exact ? sets : [0],
          least,
        ),
      ),
    }
  }
  const key = [setting.key, bed.key, retainer, meets, depth, certainty].join(' ')
  const all = Array.from({ length: strips }, (_, strip) =>
    known.of(`${key} ${strip} ${setting.noted[strip]}`, () => stripSums(strip)),
  )
  const log = all.reduce((sum, strip) => sum + strip.log, 0)
  return { bed, byHand: setting.byHand, retainer, sums, sets, lastings, kindOf, strips: all, log, depth }
}
