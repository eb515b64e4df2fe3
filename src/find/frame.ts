import { retainerMs } from './chances.ts'
import type { Followers } from './choices.ts'
import { type Layout, layoutOf } from './layout.ts'
import { needleSumsOf, type NeedleSums, type NeedleTables, needleTablesOf } from './needle-sums.ts'
import { type Lastings, lastingsIn, type LookKind } from './peaks.ts'
import type { Setting } from './setting.ts'
import { type Spans, spansOf } from './spans.ts'
import type { WideBed } from './wide.ts'

/** What the strips of a bed in some state, with a bar in some state, have in common. */
export interface Frame {
  readonly setting: Setting
  readonly bed: WideBed
  /** Index in `retainerMs`; -1 for a sound bar. */
  readonly retainer: number
  readonly layout: Layout
  readonly lastings: Lastings
  readonly spans: Spans
  readonly tables: NeedleTables
  /** What `followersOf` has found before. */
  readonly followers: Map<number, Followers>
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

/** The frame of a bed; `retainer` is an index in `retainerMs`, -1 for a sound bar. */
export const frameOf = (setting: Setting, bed: WideBed, retainer: number): Frame => {
  const { kinds, kindOf } = kindsOf(bed)
  const lastings = lastingsIn(kinds)
  return {
    setting,
    bed,
    retainer,
    layout: layoutOf(setting.bed, setting.columnOne, bed.offset),
    lastings,
    spans: spansOf(bed, lastings, kindOf),
    tables: needleTablesOf(bed, setting.slip, retainer < 0 ? 0 : retainerMs[retainer]!),
    followers: new Map<number, Followers>(),
  }
}

/** The columns of a strip, by index from 0; `strip` from 0. */
export const stripColumns = (strip: number): readonly [number, number, number] => [
  strip,
  strip + 8,
  strip + 16,
]

/** One strip of a bed with the sums of its needles. */
export interface NotedStrip {
  readonly frame: Frame
  readonly needles: NeedleSums
}

/** A strip whose dips meet with a chance, and whose pushes suffice with one. */
export const notedStripOf = (frame: Frame, strip: number, meets: number, certainty: number): NotedStrip => ({
  frame,
  needles: needleSumsOf(
    frame.tables,
    stripColumns(strip).flatMap((column) => frame.layout.followers[column]!),
    frame.setting.byHand,
    meets,
    certainty,
  ),
})

const followersIn = ({ bed, layout, spans: { right } }: Frame, column: number, over: number): Followers => {
  const needles = layout.followers[column]!
  const forced = new Int32Array(needles.length)
  for (const [n, other] of stripColumns(column % 8).entries()) {
    if ((over & (1 << n)) === 0) continue
    const met = layout.metFrom[other]!
    for (const [m, needle] of needles.entries()) {
      const looks = (needle >= met.right ? right : 0) | (needle <= met.left ? ~right : 0)
      forced[m]! |= looks & bed.pushed[other]!
    }
  }
  return { needles, forced }
}

/** The needles of a column, with the looks in which the pins of `over` (bits of the strip's columns) keep them offered. */
export const followersOf = (frame: Frame, column: number, over: number): Followers => {
  const key = over * 24 + column
  let found = frame.followers.get(key)
  if (!found) frame.followers.set(key, (found = followersIn(frame, column, over)))
  return found
}
