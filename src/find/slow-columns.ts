import { columnChances, wrongHole } from './chances.ts'
import { bitCount } from './bits.ts'
import { sumOfChoices } from './choices.ts'
import { type EndNeedle, endNeedlesOf } from './end-needles.ts'
import { type FollowerValues, valuesOf } from './follower-values.ts'
import { followersOf, type NotedStrip, stripColumns } from './frame.ts'
import { needleValue, type NeedleSums, placeOnStrip } from './needle-sums.ts'
import {
  byItself,
  byReader,
  type ByReader,
  caseAlways,
  caseSuffices,
  caseWeak,
  entriesOf,
  inCase,
  SlowEntry,
  type When,
} from './slow-entries.ts'
import { still } from './spans.ts'
import { stickyChoicesOf } from './sticky-choices.ts'
import { type ColumnState, soundColumn } from './strip-sums.ts'

interface End extends EndNeedle {
  readonly values: FollowerValues
}

/** What a column of a slow strip may do, and how likely the notes of its needles are. */
export interface SlowColumn {
  /** Sound, dead or too weak. */
  readonly usual: readonly SlowEntry[]
  /** Whether its needles missed what the card asked in some look, which a sticky pin would explain. */
  readonly missed: boolean
  /** What a sticky pin may do, but for what comes to less than `least`. */
  readonly sticky: (least: number) => SlowEntry[]
  /** Anything else. */
  readonly rare: () => SlowEntry[]
  readonly values: FollowerValues
  /** The needles near an end of the bed, by themselves. */
  readonly ends: readonly End[]
}

/** By how much likelier the notes of a column's needles must be without a look for it to count as missed. */
const missedBy = 20

/**
 * Of what a sticky pin may have done so many, the likeliest, are looked into, and speak for the others: fewer where none of
 * its needles missed anything, as then the others of its strip hide what it did.
 */
const mostChoices = { missed: 200, hidden: 32 } as const

const everyBit = (looks: number): number[] => {
  const bits: number[] = []
  for (let left = looks; left !== 0; left &= left - 1) bits.push(left & -left)
  return bits
}

const everyChoice = (looks: number): number[] => {
  const all = [0]
  for (const bit of everyBit(looks)) for (const one of [...all]) all.push(one | bit)
  return all
}

/** The most that the notes of some needles can be likely where these looks are offered, and any of `more` may be. */
const mostOf = (sums: NeedleSums, needles: readonly number[], offered: number, more: number): number => {
  let product = 1
  for (const needle of needles) {
    const slot = placeOnStrip(needle)
    let best = offered
    for (let left = sums.showing[slot]! & more & ~offered; left !== 0; left &= left - 1) {
      const bit = left & -left
      if (sums.factors[slot * sums.looks + 31 - Math.clz32(bit)]! > 1) best |= bit
    }
    product *= Math.max(needleValue(sums, slot, best), needleValue(sums, slot, offered))
  }
  return product
}

/** A column of a slow strip: the `n`th of it, where the pins of `over` (bits) stay pushed over. */
export const slowColumnOf = (
  noted: NotedStrip,
  column: number,
  over: number,
  n: number,
  isWhole: boolean,
): SlowColumn => {
  const { frame, needles: sums } = noted
  const { bed, setting } = frame
  const followers = followersOf(frame, column, over)
  const { middle, ends } = endNeedlesOf(frame.layout, bed.spans, followers)
  // What pushes do in looks in which no needle of the strip shows it makes no difference.
  const asked = bed.pushed[column]! & sums.anyShowing
  const everyPush = bed.pushes & sums.anyShowing
  const byHand = setting.byHand.columns[column]!
  const most = (pushes: number, more: number): number =>
    mostOf(sums, middle.needles, (pushes & bed.meets) | (middle.forced[0] ?? 0), more)
  const values = {
    values: valuesOf(sums, middle),
    ends: ends.map((end) => ({ ...end, values: valuesOf(sums, end.group) })),
  }
  const entries = (state: ColumnState, chances: ByReader, pushes: number, own: number): SlowEntry[] =>
    entriesOf(noted, state, chances, pushes, own)
  if (over & (1 << n)) {
    const chances = byReader((reader) => byHand.over * columnChances[reader].over)
    return {
      ...values,
      usual: entries('over', chances, 0, most(0, everyPush)),
      missed: false,
      sticky: () => [],
      rare: () => [],
    }
  }
  const fully = most(asked, everyPush)
  const none = most(0, everyPush)
  const missed = everyBit(asked & bed.meets).some(
    (bit) => most(asked & ~bit, everyPush & ~bit) > missedBy * fully,
  )
  const right = byReader(
    (reader) => byHand.right * soundColumn(reader) * (1 - setting.rows.length * wrongHole),
  )
  const dead = byReader((reader) => byHand.dead * columnChances[reader].dead)
  const weak = byReader(
    (reader) => byHand.right * (1 - columnChances[reader].dead - columnChances[reader].other),
  )
  const stillWhens: When[] = [
    { when: caseAlways, state: 'dead', chances: dead },
    { when: caseWeak, state: 'worn', chances: weak },
  ]
  // What the others of the strip may add: where one of them is up in every look, that is weighed with what is rare.
  const others = stripColumns(column % 8).reduce(
    (bits, other) => (other === column ? bits : bits | (bed.pushed[other]! & sums.anyShowing)),
    0,
  )
  const sticky = (least: number): SlowEntry[] => {
    const turns = bitCount(asked)
    const chances = byReader((reader) => byHand.sticky * columnChances[reader].sticky)
    return stickyChoicesOf({
      asked,
      mostChance: Math.max(...chances),
      least,
      most: isWhole ? Infinity : missed ? mostChoices.missed : mostChoices.hidden,
      mostOf: (choice, more) => most(choice, turns === 0 ? everyPush : more | others),
    }).flatMap(({ up, share, own }) =>
      entries(
        'sticky',
        chances.map((chance) => chance * share),
        up,
        own,
      ),
    )
  }
  const rare = (): SlowEntry[] => {
    const high = byReader((reader) => byHand.high * columnChances[reader].high)
    const hole = byReader((reader) => byHand.right * soundColumn(reader) * wrongHole)
    const other = byReader((reader) => byHand.right * columnChances[reader].other)
    const listed = [
      ...entries('high', high, everyPush, most(everyPush, 0)),
      ...setting.rows.flatMap((row) => {
        const pushes = asked ^ (row & everyPush)
        return entries('hole', hole, pushes, most(pushes, everyPush))
      }),
    ]
    // Beside a pin that stays pushed over it is too rare to matter.
    if (over !== 0 && !isWhole) return listed
    const half = sumOfChoices(valuesOf(sums, followers), everyPush & bed.meets, 0.5)
    const alone = entries('other', other, 0, half).map((entry) => byItself(entry, half))
    if (!isWhole) return [...listed, ...alone]
    // What does anything touches its neighbours, too, where its pushes suffice.
    const choices = everyChoice(everyPush)
    const each = other.map((chance) => chance / choices.length)
    const pushing = choices
      .flatMap((choice) => entries('other', each, choice, most(choice, everyPush)))
      .map((entry) => inCase(entry, caseAlways, caseSuffices))
    return [...listed, ...pushing, ...alone.map((entry) => inCase(entry, caseAlways, caseWeak))]
  }
  return {
    ...values,
    missed,
    usual: [...entries('sound', right, asked, fully), new SlowEntry(stillWhens, weak, 0, still, none)],
    sticky,
    rare,
  }
}
