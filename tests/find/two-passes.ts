import { looksOf } from '@/find/looks.ts'
import type { Query } from '@/find/query.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { notedQuery } from './noted.ts'

/** A card of four rows, and two passes of it, one each way. */
export const card = [0xf0f0f3, 0x0ff00c, 0xabcdef, 0x123456]
export const passes = [
  { row: 1, way: 1, speed: 500, pass: 1 },
  { row: 2, way: -1, speed: 900, pass: 2 },
] as const

/** What the search begins with in a query: its looks, and the setting of its sums. */
export const askedOf = (query: Query) => {
  const looks = looksOf(query)
  return { looks, setting: sumSettingOf(query, looks) }
}

/** The same, where somebody noted every needle of those passes of a machine with these faults. */
export const noted = (...ids: readonly FaultId[]) => askedOf(notedQuery(card, passes, ids))
