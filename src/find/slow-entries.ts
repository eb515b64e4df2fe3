import { type Reader, readers } from './chances.ts'
import type { NotedStrip } from './frame.ts'
import { type Reach, reachesOf, still } from './spans.ts'
import type { ColumnState } from './strip-sums.ts'

/**
 * The cases of an entry: whatever a push does, a push that does not suffice, and one that does but is never asked for;
 * the lastings follow.
 */
export const caseAlways = 0
export const caseWeak = 1
export const caseSuffices = 2
export const firstLasting = 3

/** One case in which an entry may be so: its index, what the column is, and by reader its chance. */
export interface When {
  readonly when: number
  readonly state: ColumnState
  readonly chances: readonly number[]
}

/** Something that a column of a slow strip may do, with what it means for its neighbours. */
export class SlowEntry {
  readonly whens: readonly When[]
  /** By reader: the chance of its likeliest case. */
  readonly chances: ByReader
  /** The largest of these chances. */
  readonly chance: number
  /** The looks in which it pushes, and what these pushes reach. */
  readonly pushes: number
  readonly reach: Reach
  /** The most that its chance times the notes of its own needles can come to. */
  readonly most: number
  /** How likely the notes of its own needles are, where that doesn't hang on the strip. */
  readonly own: number | null

  constructor(
    whens: readonly When[],
    chances: ByReader,
    pushes: number,
    reach: Reach,
    most: number,
    own: number | null = null,
  ) {
    this.whens = whens
    this.chances = chances
    this.chance = Math.max(...chances)
    this.pushes = pushes
    this.reach = reach
    this.most = most
    this.own = own
  }
}

export type ByReader = readonly number[]
export const byReader = (chance: (reader: Reader) => number): ByReader => readers.map(chance)

/** What pushes in these looks mean for the neighbours, case by case; cases that mean the same are one entry. */
export const entriesOf = (
  { frame: { bed } }: NotedStrip,
  state: ColumnState,
  chances: ByReader,
  pushes: number,
  most: number,
): SlowEntry[] => {
  const scored = most * Math.max(...chances)
  if (pushes === 0) {
    const when = state === 'dead' || state === 'other' ? caseAlways : caseSuffices
    return [new SlowEntry([{ when, state, chances }], chances, pushes, still, scored)]
  }
  return reachesOf(bed.spans, pushes).map((reach) => {
    const whens = reach.cases.map((n) => ({ when: firstLasting + n, state, chances }))
    return new SlowEntry(whens, chances, pushes, reach, scored)
  })
}

/** The same entry where the notes of its own needles are so likely, whatever the strip does. */
export const byItself = ({ whens, chances, pushes, reach, most }: SlowEntry, own: number): SlowEntry =>
  new SlowEntry(whens, chances, pushes, reach, most, own)

/** The same entry where it is so in another case. */
export const inCase = (
  { whens, chances, pushes, reach, most, own }: SlowEntry,
  from: number,
  to: number,
): SlowEntry =>
  new SlowEntry(
    whens.map((one) => (one.when === from ? { ...one, when: to } : one)),
    chances,
    pushes,
    reach,
    most,
    own,
  )
