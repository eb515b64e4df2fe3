import { expect } from 'vitest'
import { type Depth, type StateSums, stateSumsOf } from '@/find/bed-sums.ts'
import type { ByHand } from '@/find/by-hand.ts'
import { closeStripOf } from '@/find/close-strip.ts'
import { frameOf } from '@/find/frame.ts'
import { weighingOf } from '@/find/hidden.ts'
import { logSum } from '@/find/log-sum.ts'
import { looksOf } from '@/find/looks.ts'
import { addNeedleWays } from '@/find/needle-shares.ts'
import type { Query } from '@/find/query.ts'
import { type BedShares, addBed } from '@/find/strip-shares.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { Tally } from '@/find/tally.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { rightBed } from '@/find/wide-states.ts'
import { usualPlace, wayOfPass } from '@/mechanism/bed.ts'
import { notesOf } from './noted.ts'

/** Chance of a wrong note. */
export const slip = 0.02
const card = [0xffffff, 0, 0x200004, 0x20]
/** Needles of strip 3, two of each column; nothing is noted of any other. */
export const needles = [102, 110, 118, 126, 134, 142]

/** A look at those needles: the pass, mm/s, and a letter for each. */
export type SmallLook = readonly [pass: number, speed: number, letters: string]

/** What somebody knows who noted those needles. */
export const queryOf = (looks: readonly SmallLook[]): Query => ({
  ...usualPlace,
  card,
  passes: looks.map(([pass, speed, letters]) => ({
    card,
    row: pass,
    way: wayOfPass(pass),
    speed,
    pass,
    needles: notesOf(needles, letters),
  })),
  slip,
  checks: [],
})

/** The sums of a bed, and the weights of its hidden states. */
export interface Summed {
  readonly sums: StateSums
  readonly weights: Float64Array
  /** Log of how likely the notes are. */
  readonly log: number
}

/** Wears, by index in their table: none, and several. */
export const wears = { as: [0], worn: [0, 3, 8] } as const

interface HandMore {
  readonly name: string
  readonly byHand: (byHand: ByHand) => ByHand
}

/** By passes, depth and wears: the sums of a bed of which nothing was noted. */
const blank = new Map<string, StateSums>()

/** The sums of a bed that is right, with what was noted of strip 3; those of the others are the same whatever was. */
export const summed = (
  looks: readonly SmallLook[],
  depth: Depth,
  own: readonly number[],
  more?: HandMore,
): Summed => {
  const all = looksOf(queryOf(looks))
  const setting = sumSettingOf(queryOf(looks), all)
  const bed = wideBedOf(rightBed, all)
  const key = JSON.stringify([looks.map(([pass, speed]) => [pass, speed]), depth, own])
  let base = blank.get(key)
  if (!base) {
    const query = queryOf(looks.map(([pass, speed]) => [pass, speed, '']))
    const none = looksOf(query)
    const meeting = { meets: 1, wears: own }
    base = stateSumsOf(sumSettingOf(query, none), wideBedOf(rightBed, none), -1, meeting, depth)
    blank.set(key, base)
  }
  const byHand = more?.byHand(setting.byHand) ?? setting.byHand
  const frame = frameOf({ ...setting, key: `${setting.key} ${more?.name}`, byHand }, bed, -1)
  const sums = { ...base, frame, strips: base.strips.with(2, closeStripOf(frame, 2, 1, depth, base.hidden)) }
  const { logs } = weighingOf(byHand, -1, sums.hidden, sums.strips)
  const log = logSum(logs)
  return { sums, log, weights: logs.map((one) => Math.exp(one - log)) }
}

/** What a bed says of its places, each way by its place and causes. */
export const told = ({ sums, weights }: Summed): { tally: Map<string, number>; bed: BedShares } => {
  const tally = new Tally()
  const bed = addBed(sums, weights, tally)
  addNeedleWays(bed.whole.needles, tally)
  const ways = tally
    .entries()
    .flatMap(({ place, ways }) =>
      ways.map(({ causes, weight }): [string, number] => [`${place} ${causes.join('|')}`, weight]),
    )
  return { tally: new Map(ways), bed }
}

export type ColumnName = 'dead' | 'high' | 'over' | 'sticky'
export type StripName = 'slow' | 'seized' | 'over'

/** The same with one thing twice as likely beforehand. */
export const twice = <List extends 'strips' | 'columns' | 'needles'>(
  list: List,
  index: number,
  state: keyof ByHand[List][number],
) => ({
  name: `${list} ${index} ${String(state)}`,
  byHand: (byHand: ByHand): ByHand => ({
    ...byHand,
    [list]: (byHand[list] as readonly Record<string, number>[]).map((one, n) =>
      n === index ? { ...one, [state]: 2 * one[state as string]! } : one,
    ),
  }),
})

/** What all ways that begin so come to. */
export const sumWhere = (tally: ReadonlyMap<string, number>, start: string): number =>
  [...tally].reduce((sum, [key, weight]) => (key.startsWith(start) ? sum + weight : sum), 0)

/** What is said leaves out what is slight: a little of each number, and a share of it. */
export const expectNear = (name: string, is: number, expected: number, slight = 4e-4): void => {
  expect([name, is, Math.abs(is - expected) < slight + 0.02 * expected]).toEqual([name, is, true])
}

/** Machines of which strip 3 surely moves. */
export const moving: readonly (readonly [string, readonly SmallLook[]])[] = [
  [
    'one column missed once',
    [
      [1, 500, 'psspss'],
      [1, 900, 'ssssss'],
    ],
  ],
  [
    'slow, with a column that misses',
    [
      [3, 900, 'sspssp'],
      [1, 500, 'spsspu'],
    ],
  ],
  ['one column always', [[2, 900, 'spsspp']]],
]
/** A machine of which strip 3 surely does not move. */
export const still: readonly SmallLook[] = [
  [1, 500, 'pppppp'],
  [2, 500, 'pppppp'],
]
