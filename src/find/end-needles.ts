import type { Followers } from './follower-values.ts'
import { keptFor } from './kept.ts'
import { hasBefore, type Layout } from './layout.ts'
import type { Reach, Spans } from './spans.ts'

/** A needle near an end of the bed, which some pushes do not reach. */
export interface EndNeedle {
  readonly needle: number
  readonly forced: number
  /** Whether a push two of its strip's needles before falls into a pass to the right, and to the left. */
  readonly right: boolean
  readonly left: boolean
  /** The looks in which a push three of its strip's needles before does. */
  readonly third: number
  /** The needle by itself. */
  readonly group: Followers
}

/** A column's followers, those near an end of the bed apart. */
interface Split {
  readonly middle: Followers
  readonly ends: readonly EndNeedle[]
}

const splitOf = (layout: Layout, { right, cases }: Spans, { needles, forced }: Followers): Split => {
  const usual = forced[forced.length >> 1]
  const each = needles.map((needle, n) => {
    const third = hasBefore(layout, needle, 3)
    return {
      needle,
      forced: forced[n]!,
      ...hasBefore(layout, needle, 2),
      third: (third.right ? right : 0) | (third.left ? ~right : 0),
    }
  })
  const needsThird = cases.reduce((looks, [, , , thrice]) => looks | thrice, 0)
  const isEnd = (one: (typeof each)[number]): boolean =>
    !one.right || !one.left || one.forced !== usual || (needsThird & ~one.third) !== 0
  const groupOf = (those: typeof each): Followers => ({
    needles: those.map(({ needle }) => needle),
    forced: Int32Array.from(those, (one) => one.forced),
  })
  return {
    middle: groupOf(each.filter((one) => !isEnd(one))),
    ends: each.filter(isEnd).map((one) => ({ ...one, group: groupOf([one]) })),
  }
}

/** A column's followers, those near an end of the bed apart. */
export const endNeedlesOf = keptFor(splitOf)

/** The looks in which a column's needles are offered a hold, by what it and its neighbours to the left and right do. */
export const offersOf = (own: Reach, before: Reach, after: Reach): number =>
  own.offers | before.next | after.before

/** The same for a needle near an end of the bed. */
export const offersAtEnd = (end: EndNeedle, own: Reach, before: Reach, after: Reach): number => {
  // A push two needles back comes, going right, from the column 8 to the right; going left, from the one to the left.
  const fromBefore = end.left ? before.next : before.next & ~before.nextSecond
  const fromAfter = end.right ? after.before : after.before & ~after.beforeSecond
  return end.forced | (own.offers & ~(own.ownThird & ~end.third)) | fromBefore | fromAfter
}
