import type { Outcome } from '../../mechanism/gate.ts'
import { ofNeedle, toNeedle } from '../../mechanism/indices.ts'

/** A bed after a pass. The lists have one entry for each of its needles; `first` and `last` are the needles in use. */
export interface BedSeen {
  readonly came: readonly Outcome[]
  readonly asked: readonly Outcome[]
  readonly first: number
  readonly last: number
}

/** How a needle is drawn: as asked, forward or back, or in which of three ways it is not as asked. */
export const marks = ['plain', 'selected', 'missed', 'extra', 'unmoved'] as const
export type BedMark = (typeof marks)[number]

/** The mark of needle `index`; null where it is out of use. */
export const markOf = ({ came, asked, first, last }: BedSeen, index: number): BedMark | null => {
  if (index < first || index > last) return null
  const needle = toNeedle(index)
  const [is, should] = [ofNeedle(came, needle), ofNeedle(asked, needle)]
  if (is === 'unmoved') return 'unmoved'
  if (is === should) return is === 'selected' ? 'selected' : 'plain'
  return is === 'selected' ? 'extra' : 'missed'
}

export const isWrong = (mark: BedMark | null): boolean =>
  mark === 'missed' || mark === 'extra' || mark === 'unmoved'

/** The needles in use of each mark, from the left. */
export const needlesByMark = (bed: BedSeen): Readonly<Record<BedMark, readonly number[]>> => {
  const found: Record<BedMark, number[]> = { plain: [], selected: [], missed: [], extra: [], unmoved: [] }
  for (let index = bed.first; index <= bed.last; index++) {
    const mark = markOf(bed, index)
    if (mark) found[mark].push(index)
  }
  return found
}
