import { type Bed, needlesOfStrip, wholeBedOf } from '../mechanism/bed.ts'
import { allStrips, type Needle } from '../mechanism/indices.ts'
import { type ByHand, byHandOf } from './by-hand.ts'
import { notes } from './bed-letters.ts'
import { type Look, noteIn } from './looks.ts'
import { Memo, shortNames } from './memo.ts'
import type { Query } from './query.ts'
import { dimensionsAt, ownKey } from './view.ts'

/** What of a query the sums need beside its looks. */
export interface SumSetting {
  readonly bed: Bed
  /** Index of the needle of column 1. */
  readonly columnOne: number
  readonly slip: number
  /** By row of a card that was under the pins: the looks in which it was. */
  readonly rows: readonly number[]
  readonly byHand: ByHand
  /** A text that two settings share only where they differ in nothing but what was noted of needles. */
  readonly key: string
  /** By strip: its needles, from the left. */
  readonly needles: readonly (readonly Needle[])[]
  /** By strip: a text that two share only where the same was noted of its needles; none where nothing was. */
  readonly noted: readonly string[]
}

/** By row of a card that was under the pins: the looks in which it was. */
const rowsOfLooks = (looks: readonly Look[]): number[] => {
  const rows = new Map<string, number>()
  for (const [n, { view }] of looks.entries()) {
    if (!view.card) continue
    const row = (view.pass - 1) % view.card.length
    const key = `${row + (view.shift ?? 0)} ${view.card.join()}`
    rows.set(key, (rows.get(key) ?? 0) | (1 << n))
  }
  return [...rows.values()]
}

const settingName = shortNames(50)
const foundByHand = new Memo<ByHand>(20)
const notesName = shortNames(5000)

/** What the sums need of a query beside its looks. */
export const sumSettingOf = (query: Query, looks: readonly Look[]): SumSetting => {
  const needles = allStrips.map((strip) => needlesOfStrip(strip, query, dimensionsAt(query).needles))
  return {
    bed: wholeBedOf(dimensionsAt(query).needles),
    columnOne: query.columnOne,
    slip: query.slip,
    rows: rowsOfLooks(looks),
    byHand: foundByHand.of(JSON.stringify([query.checks, query.intake, query.experience]), () =>
      byHandOf(query.checks, query.intake, query.experience),
    ),
    key: settingName(
      JSON.stringify([
        query.slip,
        query.columnOne,
        ownKey(query),
        query.checks,
        query.intake,
        query.experience,
        looks.map(({ view: { pass, speed, shift, card } }) => [pass, speed, shift, card]),
      ]),
    ),
    needles,
    noted: needles.map((those) => {
      const own = those.map((needle) => looks.map((look) => noteIn(look, needle)))
      const isNoted = own.some((needle) => needle.some((note) => note !== notes.none))
      return isNoted ? notesName(own.map((needle) => needle.join('')).join(' ')) : ''
    }),
  }
}
