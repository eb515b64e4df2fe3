import { columnChances, readers, stickyChances, wrongHole } from './chances.ts'
import { bitCount, followersValue, sumOfChoices } from './column-sums.ts'
import { hasSecond, rightLooks } from './layout.ts'
import { needleValue, type NeedleSums } from './needle-sums.ts'
import type { Lasting } from './peaks.ts'
import { type BedSums, type ColumnState, followersOf, soundColumn, stripColumns } from './strip-sums.ts'

/**
 * The cases of an entry: whatever a push does, a push that does not suffice, and one that does but is never asked for;
 * the lastings follow.
 */
export const caseAlways = 0
export const caseWeak = 1
export const caseSuffices = 2
export const firstLasting = 3

/** One case in which an entry may be so: its index, what the column is, and by reader its chance. */
interface When {
  readonly when: number
  readonly state: ColumnState
  readonly chances: readonly number[]
}

/** Something that a column of a slow strip may do, with what it means for its neighbours. */
export interface SlowEntry {
  readonly whens: readonly When[]
  /** The looks in which it pushes, and those in which that offers its own needles a hold. */
  readonly pushes: number
  readonly offers: number
  /** The looks in which its pushes last for the next column, 8 to the right, and for the one 8 to the left. */
  readonly next: number
  readonly before: number
  /** The parts of those that need a second needle of the strip to have been passed. */
  readonly nextSecond: number
  readonly beforeSecond: number
  /** How likely the notes of its own needles are, where that doesn't hang on the strip. */
  readonly own: number | null
  /** The most that its chance times the notes of its own needles can come to. */
  readonly most: number
}

/** A needle near an end of the bed, which some pushes do not reach. */
export interface EndNeedle {
  readonly needle: number
  readonly forced: number
  readonly right: boolean
  readonly left: boolean
}

/**
 * Called for each term of a slow strip's sum: what its three columns do, how likely the notes are, and by column its
 * needles near an end of the bed.
 */
export type EachTerm = (
  entries: readonly [SlowEntry, SlowEntry, SlowEntry],
  value: number,
  ends: readonly (readonly EndNeedle[])[],
) => void

/** The looks in which a column's needles are offered a hold, by what it and its neighbours to the left and right do. */
export const offersOf = (own: SlowEntry, before: SlowEntry, after: SlowEntry): number =>
  own.offers | before.next | after.before

/** The same for a needle near an end of the bed. */
export const offersAtEnd = (end: EndNeedle, own: SlowEntry, before: SlowEntry, after: SlowEntry): number => {
  // A push two needles back comes, going right, from the column 8 to the right; going left, from the one to the left.
  const fromBefore = end.left ? before.next : before.next & ~before.nextSecond
  const fromAfter = end.right ? after.before : after.before & ~after.beforeSecond
  return end.forced | own.offers | fromBefore | fromAfter
}

/**
 * Terms that can't have more than this share of the best one are left out: those with one rare thing, and those with
 * more of them at once, which matter only where the rest explains little.
 */
const slight = { one: 1e-7, more: 1e-6 } as const

interface End extends EndNeedle {
  readonly value: (offered: number) => number
}

interface Column {
  readonly asked: number
  /** Whether its needles missed what the card asked in some look, which a sticky pin would explain. */
  readonly missed: boolean
  /** Sound, dead or too weak; sticky; anything else. */
  readonly usual: readonly SlowEntry[]
  readonly sticky: readonly SlowEntry[]
  readonly rare: readonly SlowEntry[]
  readonly value: (offered: number) => number
  /** The needles near an end of the bed, by themselves. */
  readonly ends: readonly End[]
}

/** By how much likelier the notes of a column's needles must be without a look for it to count as missed. */
const missedBy = 20

const everyBit = (looks: number): number[] => {
  const bits: number[] = []
  for (let left = looks; left !== 0; left &= left - 1) bits.push(left & -left)
  return bits
}

const everyChoice = (looks: number): number[] => {
  const all = [0]
  for (let left = looks; left !== 0; left &= left - 1) {
    const bit = left & -left
    for (const one of [...all]) all.push(one | bit)
  }
  return all
}

const memoOf = (looks: number, valueOf: (offered: number) => number): ((offered: number) => number) => {
  const every = (1 << looks) - 1
  if (looks > 12) {
    const known = new Map<number, number>()
    return (offered) => {
      let value = known.get(offered & every)
      if (value === undefined) known.set(offered & every, (value = valueOf(offered)))
      return value
    }
  }
  const known = new Float64Array(1 << looks).fill(-1)
  return (offered) => {
    const value = known[offered & every]!
    return value >= 0 ? value : (known[offered & every] = valueOf(offered))
  }
}

/** The most that the notes of some needles can be likely where these looks are offered, and any of `more` may be. */
const mostOf = (sums: NeedleSums, needles: readonly number[], offered: number, more: number): number => {
  let product = 1
  for (const needle of needles) {
    let best = offered
    for (let left = sums.telling[needle]! & more & ~offered; left !== 0; left &= left - 1) {
      const bit = left & -left
      if (sums.factors[needle * sums.looks + 31 - Math.clz32(bit)]! > 1) best |= bit
    }
    product *= Math.max(needleValue(sums, needle, best), needleValue(sums, needle, offered))
  }
  return product
}

/** The looks in which a push of this case offers a hold to the needle so many on, along its strip. */
const lastingLooks = (kindOf: readonly number[], lasting: Lasting, on: number): number =>
  kindOf.reduce((bits, kind, n) => (lasting[kind]! & (1 << on) ? bits | (1 << n) : bits), 0)

/** What the slow strips of a bed have in common. */
export interface SlowSetting {
  readonly sums: BedSums
  readonly cases: readonly Lasting[]
  /** By look, the index of its kind in the lastings. */
  readonly kindOf: readonly number[]
  readonly isRough: boolean
  /** Whether every combination is summed, however rare: that takes long for more than a few looks. */
  readonly isWhole: boolean
}

/** What pushes in these looks mean for the neighbours, case by case; cases that mean the same are one entry. */
const entriesOf = (
  { sums, cases, kindOf }: SlowSetting,
  state: ColumnState,
  chances: readonly number[],
  pushes: number,
  most: number,
): SlowEntry[] => {
  const scored = most * Math.max(...chances)
  if (pushes === 0) {
    const still = { next: 0, before: 0, nextSecond: 0, beforeSecond: 0 }
    const when = state === 'dead' || state === 'other' ? caseAlways : caseSuffices
    return [{ ...still, whens: [{ when, state, chances }], pushes, offers: 0, own: null, most: scored }]
  }
  const right = rightLooks(sums.bed)
  const byReach = new Map<string, { entry: SlowEntry; whens: When[] }>()
  for (const [n, lasting] of cases.entries()) {
    const offers = pushes & lastingLooks(kindOf, lasting, 0)
    const once = pushes & lastingLooks(kindOf, lasting, 1)
    const twice = pushes & lastingLooks(kindOf, lasting, 2)
    const key = `${offers} ${once} ${twice}`
    const when = { when: firstLasting + n, state, chances }
    const found = byReach.get(key)
    if (found) {
      found.whens.push(when)
      continue
    }
    const [nextSecond, beforeSecond] = [twice & ~right, twice & right]
    const whens = [when]
    byReach.set(key, {
      whens,
      entry: {
        whens,
        pushes,
        offers,
        next: (once & right) | nextSecond,
        before: (once & ~right) | beforeSecond,
        nextSecond,
        beforeSecond,
        own: null,
        most: scored,
      },
    })
  }
  return [...byReach.values()].map(({ entry }) => entry)
}

/** The same entry where it is so in another case. */
const inCase = (entry: SlowEntry, from: number, to: number): SlowEntry => ({
  ...entry,
  whens: entry.whens.map((one) => (one.when === from ? { ...one, when: to } : one)),
})

const columnOf = (setting: SlowSetting, column: number, over: number, n: number): Column => {
  const { sums } = setting
  const { bed, needles: needleSums, layout, rows } = sums
  const looks = bed.looks.length
  const followers = followersOf(sums, column, over)
  const middleForced = followers.forced[followers.forced.length >> 1]
  const isEnd = followers.needles.map((needle, m) => {
    const second = hasSecond(layout, needle)
    return !second.right || !second.left || followers.forced[m] !== middleForced
  })
  const middle = {
    needles: followers.needles.filter((_, m) => !isEnd[m]),
    forced: followers.forced.filter((_, m) => !isEnd[m]),
  }
  const ends = followers.needles.flatMap((needle, m): End[] =>
    isEnd[m]
      ? [
          {
            needle,
            forced: followers.forced[m]!,
            ...hasSecond(layout, needle),
            value: memoOf(looks, (offered) => needleValue(needleSums, needle, offered)),
          },
        ]
      : [],
  )
  const value = memoOf(looks, (offered) => followersValue(needleSums, middle, offered))
  const asked = bed.pushed[column]!
  const of = (chance: (reader: (typeof readers)[number]) => number): number[] => readers.map(chance)
  const own = stripColumns(column % 8)
  const byHand = sums.byHand.columns[column]!
  // What the others may add: where one of them is up in every look, that is weighed with `rare`.
  const others = own.reduce((bits, other) => (other === column ? bits : bits | bed.pushed[other]!), 0)
  const most = (pushes: number, more: number): number =>
    mostOf(needleSums, middle.needles, (pushes & bed.meets) | (middle.forced[0] ?? 0), more)
  const fully = most(asked, bed.pushes)
  const missed = everyBit(asked & bed.meets).some(
    (bit) => most(asked & ~bit, bed.pushes & ~bit) > missedBy * fully,
  )
  const base = { asked, missed, value, ends }
  if (over & (1 << n)) {
    const chances = of((reader) => byHand.over * columnChances[reader].over)
    return {
      ...base,
      usual: entriesOf(setting, 'over', chances, 0, most(0, bed.pushes)),
      sticky: [],
      rare: [],
    }
  }
  const sound = of((reader) => byHand.right * soundColumn(reader) * (1 - rows.length * wrongHole))
  const dead = of((reader) => byHand.dead * columnChances[reader].dead)
  const weak = of((reader) => byHand.right * (1 - columnChances[reader].dead - columnChances[reader].other))
  const [still] = entriesOf(setting, 'dead', dead, 0, most(0, bed.pushes))
  const usual: SlowEntry[] = [
    ...entriesOf(setting, 'sound', sound, asked, most(asked, bed.pushes)),
    {
      ...still!,
      whens: [...still!.whens, { when: caseWeak, state: 'worn', chances: weak }],
      most: most(0, bed.pushes),
    },
  ]
  const high = entriesOf(
    setting,
    'high',
    of((reader) => byHand.high * columnChances[reader].high),
    bed.pushes,
    most(bed.pushes, 0),
  )
  const count = bitCount(asked)
  const sticky =
    count === 0
      ? entriesOf(
          setting,
          'sticky',
          of((reader) => byHand.sticky * columnChances[reader].sticky),
          0,
          most(0, bed.pushes),
        )
      : everyChoice(asked).flatMap((choice) => {
          const on = bitCount(choice)
          const share = stickyChances.reduce(
            (sum, each) => sum + each.chance * (1 - each.share) ** on * each.share ** (count - on),
            0,
          )
          const chances = of((reader) => byHand.sticky * columnChances[reader].sticky * share)
          return entriesOf(setting, 'sticky', chances, choice, most(choice, others))
        })
  const holes = rows.flatMap((row) =>
    entriesOf(
      setting,
      'hole',
      of((reader) => byHand.right * soundColumn(reader) * wrongHole),
      asked ^ (row & bed.pushes),
      most(asked ^ (row & bed.pushes), bed.pushes),
    ),
  )
  const half = sumOfChoices(needleSums, followers, bed.pushes & bed.meets, 0.5)
  const other = of((reader) => byHand.right * columnChances[reader].other)
  const rest = entriesOf(setting, 'other', other, 0, half).map((entry) => ({ ...entry, own: half }))
  if (!setting.isWhole) return { ...base, usual, sticky, rare: [...high, ...holes, ...rest] }
  // What does anything touches its neighbours, too, where its pushes suffice.
  const choices = everyChoice(bed.pushes)
  const each = other.map((chance) => chance / choices.length)
  const pushing = choices
    .flatMap((choice) => entriesOf(setting, 'other', each, choice, most(choice, bed.pushes)))
    .map((entry) => inCase(entry, caseAlways, caseSuffices))
  const weakly = rest.map((entry) => inCase(entry, caseAlways, caseWeak))
  return { ...base, usual, sticky, rare: [...high, ...holes, ...pushing, ...weakly] }
}

/** How likely the notes of a column's needles are, with what it and its neighbours to the left and right do. */
const columnValue = (column: Column, own: SlowEntry, before: SlowEntry, after: SlowEntry): number => {
  if (own.own !== null) return own.own
  let value = column.value(offersOf(own, before, after))
  for (const end of column.ends) value *= end.value(offersAtEnd(end, own, before, after))
  return value
}

/** The most entries of a column that are combined with rare ones of other columns. */
const mostEntries = 64

/** The likeliest first; of those alike, the one that asks least of its neighbours. */
const byMost = (entries: readonly SlowEntry[]): SlowEntry[] =>
  [...entries].sort((a, b) => b.most - a.most || bitCount(b.pushes) - bitCount(a.pushes))

/** Calls back for each combination of one entry a column, but for slight ones; `sum` is what was summed before. */
const eachOf = (
  columns: readonly [Column, Column, Column],
  lists: readonly [readonly SlowEntry[], readonly SlowEntry[], readonly SlowEntry[]],
  least: number,
  each: EachTerm,
  slightest: number = slight.one,
): number => {
  const [first, second, third] = lists.map(byMost) as [SlowEntry[], SlowEntry[], SlowEntry[]]
  const [a, b, c] = columns
  const ends = columns.map((column) => column.ends)
  const [mostSecond, mostThird] = [second[0]?.most ?? 0, third[0]?.most ?? 0]
  let best = least
  for (const one of first) {
    if (one.most * mostSecond * mostThird < slightest * best) break
    for (const two of second) {
      if (one.most * two.most * mostThird < slightest * best) break
      for (const three of third) {
        const most = one.most * two.most * three.most
        if (most < slightest * best) break
        const value =
          columnValue(a, one, three, two) * columnValue(b, two, one, three) * columnValue(c, three, two, one)
        if (value === 0) continue
        // An entry too weak to push counts with a chance that wear decides, so it raises no bar for others.
        if (one.pushes !== 0 && two.pushes !== 0 && three.pushes !== 0) {
          const [first, second, third] = [
            one.whens[0]!.chances,
            two.whens[0]!.chances,
            three.whens[0]!.chances,
          ]
          const chance = Math.max(...first.map((own, r) => own * second[r]! * third[r]!))
          best = Math.max(best, chance * value)
        }
        each([one, two, three], value, ends)
      }
    }
  }
  return best
}

/** The plainest terms only: sound columns, and dead ones beside sound ones whose pushes last alike. */
const eachRoughTerm = (setting: SlowSetting, strip: number, each: EachTerm): void => {
  const { sums } = setting
  const columns = stripColumns(strip).map((column): RoughColumn => {
    const followers = followersOf(sums, column, 0)
    const sound = entriesOf(setting, 'sound', soundChances, sums.bed.pushed[column]!, 1)
    const dead = entriesOf(setting, 'dead', deadChances, 0, 1)
    return {
      sound: sound.flatMap((entry) => entry.whens.map((when) => ({ ...entry, whens: [when] }))),
      dead: dead[0]!,
      value: memoOf(sums.bed.looks.length, (offered) => followersValue(sums.needles, followers, offered)),
    }
  })
  const [a, b, c] = columns as [RoughColumn, RoughColumn, RoughColumn]
  const term = (one: SlowEntry, two: SlowEntry, three: SlowEntry): void => {
    const value =
      a.value(one.offers | three.next | two.before) *
      b.value(two.offers | one.next | three.before) *
      c.value(three.offers | two.next | one.before)
    each([one, two, three], value, noEnds)
  }
  for (let set = 1; set < 7; set++) {
    const isDead = (m: number): boolean => (set & (1 << m)) !== 0
    const count = Math.max(...columns.map(({ sound }, m) => (isDead(m) ? 1 : sound.length)))
    for (let n = 0; n < count; n++) {
      const [one, two, three] = columns.map(({ sound, dead }, m) =>
        isDead(m) ? dead : sound[Math.min(n, sound.length - 1)]!,
      ) as [SlowEntry, SlowEntry, SlowEntry]
      term(one, two, three)
    }
  }
  for (const one of a.sound) for (const two of b.sound) for (const three of c.sound) term(one, two, three)
}

interface RoughColumn {
  readonly sound: readonly SlowEntry[]
  readonly dead: SlowEntry
  readonly value: (offered: number) => number
}

const noEnds: readonly (readonly EndNeedle[])[] = [[], [], []]
const soundChances = readers.map(soundColumn)
const deadChances = readers.map((reader) => columnChances[reader].dead)

/**
 * Calls back for the terms of a slow strip's sum: the combinations of what its three columns may do, but for slight ones
 * and, where there are many looks, for those of two rare things on one strip that nothing asks for. The pins of `over`
 * (bits) stay pushed over; `least` is what a term must have a share of to count.
 */
export const eachSlowTerm = (
  setting: SlowSetting,
  strip: number,
  over: number,
  least: number,
  each: EachTerm,
): void => {
  if (setting.isRough) {
    eachRoughTerm(setting, strip, each)
    return
  }
  const columns = stripColumns(strip).map((column, n) => columnOf(setting, column, over, n)) as [
    Column,
    Column,
    Column,
  ]
  const list = (pick: (column: Column, n: number) => readonly SlowEntry[]) =>
    columns.map(pick) as [readonly SlowEntry[], readonly SlowEntry[], readonly SlowEntry[]]
  if (setting.isWhole) {
    eachOf(
      columns,
      list(({ usual, sticky, rare }) => [...usual, ...sticky, ...rare]),
      0,
      each,
      0,
    )
    return
  }
  const usual = list((column) => column.usual)
  let best = eachOf(columns, usual, least, each)
  for (const set of [1, 2, 4, 3, 5, 6, 7]) {
    const isIn = (n: number): boolean => (set & (1 << n)) !== 0
    const isOne = bitCount(set) === 1
    if (isOne)
      best = eachOf(
        columns,
        list((column, n) => (isIn(n) ? column.rare : column.usual)),
        best,
        each,
      )
    const unasked = columns.filter(({ missed }, n) => isIn(n) && !missed).length
    if (over !== 0 || unasked > 1) continue
    const lists = list((column, n) => {
      if (!isIn(n)) return column.usual
      return isOne ? column.sticky : byMost(column.sticky).slice(0, mostEntries)
    })
    best = eachOf(columns, lists, best, each, isOne ? slight.one : slight.more)
  }
}
