import { retainerMs } from './chances.ts'
import type { Followers } from './follower-values.ts'
import { keptFor } from './kept.ts'
import { type Layout, layoutOf } from './layout.ts'
import { needleSumsOf, type NeedleSums, type NeedleTables, needleTablesOf } from './needle-sums.ts'
import { Memo } from './memo.ts'
import type { SumSetting } from './sum-setting.ts'
import type { Spans } from './spans.ts'
import type { WideBed } from './wide-bed.ts'

/** What the strips of a bed in some state, with a bar in some state, have in common. */
export interface Frame {
  readonly setting: SumSetting
  readonly bed: WideBed
  /** Index in `retainerMs`; -1 for a sound bar. */
  readonly retainer: number
  readonly layout: Layout
  readonly tables: NeedleTables
}

/** The same for beds that sort butts alike, and for needles of which the same was noted. */
const tablesMade = new Memo<NeedleTables>(200)
const needlesMade = new Memo<NeedleSums>(600)

/** The frame of a bed; `retainer` is an index in `retainerMs`, -1 for a sound bar. */
export const frameOf = (setting: SumSetting, bed: WideBed, retainer: number): Frame => ({
  setting,
  bed,
  retainer,
  layout: layoutOf(bed.peaks.dimensions, setting.bed, setting.columnOne, bed.offset, bed.earlyBy),
  tables: tablesMade.of(`${setting.key} ${bed.sorting} ${retainer}`, () =>
    needleTablesOf(bed, setting.slip, retainer < 0 ? 0 : retainerMs[retainer]!),
  ),
})

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
export const notedStripOf = (frame: Frame, strip: number, meets: number, certainty: number): NotedStrip => {
  const { setting, bed, retainer, tables } = frame
  const own = [setting.key, strip, setting.noted[strip], bed.sorting, retainer, meets, certainty]
  const needles = needlesMade.of(own.join(' '), () =>
    needleSumsOf(tables, setting.needles[strip]!, bed.looks, setting.byHand, meets, certainty),
  )
  return { frame, needles }
}

const followersIn = (
  { followers, metFrom }: Layout,
  pushed: Int32Array,
  { right }: Spans,
  column: number,
  over: number,
): Followers => {
  const { needles } = followers[column]!
  const forced = new Int32Array(needles.length)
  for (const [n, other] of stripColumns(column % 8).entries()) {
    if ((over & (1 << n)) === 0) continue
    const met = metFrom[other]!
    for (const [m, needle] of needles.entries()) {
      const looks = (needle >= met.right ? right : 0) | (needle <= met.left ? ~right : 0)
      forced[m]! |= looks & pushed[other]!
    }
  }
  return { needles, forced }
}

const forcedFollowers = keptFor(followersIn)

/** The needles of a column, with the looks in which the pins of `over` (bits of the strip's columns) keep them offered. */
export const followersOf = ({ bed, layout }: Frame, column: number, over: number): Followers =>
  over === 0 ? layout.followers[column]! : forcedFollowers(layout, bed.pushed, bed.spans, column, over)
