import { bitCount } from './bits.ts'
import { offersAtEnd, offersOf } from './end-needles.ts'
import { type NotedStrip, stripColumns } from './frame.ts'
import { type SlowColumn, slowColumnOf } from './slow-columns.ts'
import type { SlowEntry } from './slow-entries.ts'

type Three<Thing> = readonly [Thing, Thing, Thing]

/** Takes a term of a slow strip's sum: what its three columns do, how likely the notes are, and about what it comes to. */
export type TakeTerm = (one: SlowEntry, two: SlowEntry, three: SlowEntry, value: number, size: number) => void

/**
 * Terms that can't have more than this share of the best one are left out: those with one rare thing, and those with
 * more of them at once, which matter only where the rest explains little.
 */
const slight = { one: 1e-6, more: 1e-5 } as const
/** Those that turn out to have less than this share of a slight one add nothing. */
const nothing = 1e-12

/** The most entries of a column that are combined with rare ones of other columns. */
const mostEntries = 64

/**
 * How likely the notes of a column's needles near the ends of the bed are, with what it and its neighbours to the left and
 * right do.
 */
const endsValue = (column: SlowColumn, own: SlowEntry, before: SlowEntry, after: SlowEntry): number => {
  let value = 1
  if (own.own !== null) return value
  for (const end of column.ends)
    value *= end.values.of(offersAtEnd(end, own.reach, before.reach, after.reach))
  return value
}

/** The likeliest first; of those alike, the one that asks least of its neighbours. */
const byMost = (entries: readonly SlowEntry[]): SlowEntry[] =>
  [...entries].sort((a, b) => b.most - a.most || bitCount(b.pushes) - bitCount(a.pushes))

const mostIn = (entries: readonly SlowEntry[]): number =>
  entries.reduce((most, entry) => Math.max(most, entry.most), 0)

/** The chance of three entries, by the reader that suits them best. */
const chanceOf = (
  { chances: a }: SlowEntry,
  { chances: b }: SlowEntry,
  { chances: c }: SlowEntry,
): number => {
  let best = 0
  for (let r = 0; r < a.length; r++) best = Math.max(best, a[r]! * b[r]! * c[r]!)
  return best
}

/** Gives each combination of two entries with one of a third column, as `giveEach` does; gives the best. */
const giveWith = (
  [a, b, c]: Three<SlowColumn>,
  one: SlowEntry,
  two: SlowEntry,
  thirds: readonly SlowEntry[],
  found: number,
  slightest: number,
  take: TakeTerm,
): number => {
  let best = found
  for (const three of thirds) {
    if (one.most * two.most * three.most < slightest * best) break
    // Most terms come to nothing, as the needles of one column show.
    const least = nothing * slightest * best
    const ofOne = one.own ?? a.values.of(offersOf(one.reach, three.reach, two.reach))
    if (ofOne * one.chance * two.most * three.most <= least) continue
    const ofTwo = two.own ?? b.values.of(offersOf(two.reach, one.reach, three.reach))
    if (ofOne * one.chance * ofTwo * two.chance * three.most <= least) continue
    const middle = ofOne * ofTwo * (three.own ?? c.values.of(offersOf(three.reach, two.reach, one.reach)))
    if (middle * one.chance * two.chance * three.chance <= least) continue
    const value =
      middle * endsValue(a, one, three, two) * endsValue(b, two, one, three) * endsValue(c, three, two, one)
    const size = chanceOf(one, two, three) * value
    if (size <= least) continue
    // An entry too weak to push counts with a chance that wear decides, so it raises no bar for others.
    if (one.pushes !== 0 && two.pushes !== 0 && three.pushes !== 0) best = Math.max(best, size)
    take(one, two, three, value, size)
  }
  return best
}

/** Gives each combination of one entry a column, but for slight ones; `found` is the best that was found before, and what comes back. */
const giveEach = (
  columns: Three<SlowColumn>,
  lists: Three<readonly SlowEntry[]>,
  found: number,
  slightest: number,
  take: TakeTerm,
): number => {
  const [first, second, third] = lists.map(byMost) as unknown as Three<SlowEntry[]>
  const [mostSecond, mostThird] = [second[0]?.most ?? 0, third[0]?.most ?? 0]
  let best = found
  for (const one of first) {
    if (one.most * mostSecond * mostThird < slightest * best) break
    for (const two of second) {
      if (one.most * two.most * mostThird < slightest * best) break
      best = giveWith(columns, one, two, third, best, slightest, take)
    }
  }
  return best
}

/** How deep a slow strip is summed: sound, dead and worn columns only; what matters; or every combination. */
export type SlowDepth = 'usual' | 'close' | 'whole'

/**
 * Gives each term of a slow strip's sum: the combinations of what its three columns may do. Close ones leave out slight ones, and
 * those of two rare things on one strip that nothing asks for. The pins of `over` (bits) stay pushed over; `least` is what a
 * term must have a share of to count.
 */
export const eachSlowTerm = (
  noted: NotedStrip,
  strip: number,
  over: number,
  least: number,
  depth: SlowDepth,
  take: TakeTerm,
): void => {
  const columns = stripColumns(strip).map((column, n) =>
    slowColumnOf(noted, column, over, n, depth === 'whole'),
  ) as unknown as Three<SlowColumn>
  const list = (pick: (column: SlowColumn, n: number) => readonly SlowEntry[]) =>
    columns.map(pick) as unknown as Three<readonly SlowEntry[]>
  if (depth === 'whole') {
    const all = list(({ usual, sticky, rare }) => [...usual, ...sticky(0), ...rare()])
    giveEach(columns, all, 0, 0, take)
    return
  }
  const usual = list((column) => column.usual)
  const mosts = usual.map(mostIn)
  let best = giveEach(columns, usual, least, slight.one, take)
  if (depth === 'usual') return
  // What comes to less than this is slight, whatever its neighbours do.
  const floor = (n: number): number =>
    slight.one * Math.min(mosts[n]!, best / (mosts[(n + 1) % 3]! * mosts[(n + 2) % 3]!))
  const sticky = columns.map((column, n) => (over === 0 ? byMost(column.sticky(floor(n))) : []))
  for (const set of [1, 2, 4, 3, 5, 6, 7]) {
    const isIn = (n: number): boolean => (set & (1 << n)) !== 0
    const isOne = bitCount(set) === 1
    if (isOne)
      best = giveEach(
        columns,
        list((column, n) => (isIn(n) ? column.rare() : column.usual)),
        best,
        slight.one,
        take,
      )
    const unasked = columns.filter(({ missed }, n) => isIn(n) && !missed).length
    if (over !== 0 || unasked > 1) continue
    const lists = list((column, n) => {
      if (!isIn(n)) return column.usual
      return isOne ? sticky[n]! : sticky[n]!.slice(0, mostEntries)
    })
    best = giveEach(columns, lists, best, isOne ? slight.one : slight.more, take)
  }
}
