import { type Lasting, type Lastings, lastingsIn, type LookKind } from './lastings.ts'
import { keptFor } from './kept.ts'
import { Memo } from './memo.ts'
import type { Peaks } from './peaks.ts'

/** In which looks pushes on slow strips last how far, for a bed in some state; a bit a look. */
export interface Spans {
  /** The looks that go to the right. */
  readonly right: number
  /**
   * By case of a push: the looks in which it offers a hold to its own needles, to the next of the strip, to the one after, and
   * to the third on, which is of its own column again.
   */
  readonly cases: readonly (readonly [own: number, once: number, twice: number, thrice: number])[]
}

const looksOf = (kindOf: readonly number[], lasting: Lasting, on: number): number =>
  kindOf.reduce((bits, kind, n) => (lasting[kind]! & (1 << on) ? bits | (1 << n) : bits), 0)

/** Spans of late, by what was made of the same lastings, looks and ways. */
const spansOf = keptFor<[Lastings], Memo<Spans>>(() => new Memo<Spans>(4))

/** How pushes on slow strips last in the looks of a bed, and how far in which looks. */
export const lastingIn = (
  peaks: Peaks,
  views: readonly LookKind[],
  right: number,
): { readonly lastings: Lastings; readonly spans: Spans } => {
  const keyOf = ({ speed, early }: LookKind): string => `${speed} ${early}`
  const kinds = [...new Map(views.map((view) => [keyOf(view), view])).values()].sort(
    (a, b) => a.speed - b.speed || a.early - b.early,
  )
  const keys = kinds.map(keyOf)
  const kindOf = views.map((view) => keys.indexOf(keyOf(view)))
  const lastings = lastingsIn(peaks, kinds)
  const spans = spansOf(lastings).of(`${right} ${kindOf.join()}`, () => ({
    right,
    cases: lastings.cases.map(
      (lasting) => [0, 1, 2, 3].map((on) => looksOf(kindOf, lasting, on)) as [number, number, number, number],
    ),
  }))
  return { lastings, spans }
}

/** What pushes in some looks reach, in some cases. */
export interface Reach {
  /** The looks in which they offer a hold to the column's own needles. */
  readonly offers: number
  /** Those in which they last for the next column, 8 to the right, and for the one 8 to the left. */
  readonly next: number
  readonly before: number
  /** The parts of those that need a second needle of the strip to have been passed. */
  readonly nextSecond: number
  readonly beforeSecond: number
  /** The part of the offers to its own needles that needs a third needle of the strip to have been passed. */
  readonly ownThird: number
  readonly cases: readonly number[]
}

/** What pushes in no look reach. */
export const still: Reach = {
  offers: 0,
  next: 0,
  before: 0,
  nextSecond: 0,
  beforeSecond: 0,
  ownThird: 0,
  cases: [],
}

/** What pushes in these looks reach, in every case: cases in which they reach the same are one. */
export const reachesOf = keptFor(({ cases, right }: Spans, pushes: number): readonly Reach[] => {
  const found: { own: number; once: number; twice: number; thrice: number; cases: number[] }[] = []
  for (const [n, [ownAll, onceAll, twiceAll, thriceAll]] of cases.entries()) {
    const [own, once, twice, thrice] = [
      pushes & ownAll,
      pushes & onceAll,
      pushes & twiceAll,
      pushes & thriceAll,
    ]
    const alike = found.find(
      (one) => one.own === own && one.once === once && one.twice === twice && one.thrice === thrice,
    )
    if (alike) alike.cases.push(n)
    else found.push({ own, once, twice, thrice, cases: [n] })
  }
  return found.map(({ own, once, twice, thrice, cases: those }) => ({
    offers: own | thrice,
    next: (once & right) | (twice & ~right),
    before: (once & ~right) | (twice & right),
    nextSecond: twice & ~right,
    beforeSecond: twice & right,
    ownThird: thrice,
    cases: those,
  }))
})
