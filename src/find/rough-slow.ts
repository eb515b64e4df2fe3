import { columnChances, readers, slowChances } from './chances.ts'
import { type FollowerValues, valuesOf } from './follower-values.ts'
import { followersOf, type NotedStrip, stripColumns } from './frame.ts'
import { hiddenOf } from './hidden.ts'
import { keptFor } from './kept.ts'
import type { Lastings } from './lastings.ts'
import { type Reach, reachesOf, type Spans, still } from './spans.ts'
import { soundColumn } from './strip-sums.ts'

/** Wears that are taken for all where beds are weighed roughly, by their index in the table. */
const roughWears = [0, 4, 7, 10, 12] as const
/** The most worn of them. */
export const mostWorn = 12

/** The hidden states that beds are roughly weighed with. */
export const roughHidden = hiddenOf(roughWears, false)

/** What a column of a slow strip may reach, roughly: nothing where it is still, or as pushes as the card asks do. */
interface RoughReaches {
  readonly reaches: readonly Reach[]
  /** By wear, slowness and reach: how likely it is of such pushes; 1 for one that is still. */
  readonly chances: Float64Array
}

const roughReachesOf = keptFor((spans: Spans, lastings: Lastings, pushes: number): RoughReaches => {
  const reaches = [still, ...reachesOf(spans, pushes)]
  const chances = roughWears.flatMap((wear) =>
    lastings.chances[wear]!.flatMap((cases) =>
      reaches.map((reach) => (reach === still ? 1 : reach.cases.reduce((sum, n) => sum + cases[n]!, 0))),
    ),
  )
  return { reaches, chances: Float64Array.from(chances) }
})

/** A column of a slow strip, as it is roughly summed. */
interface RoughColumn {
  readonly possible: RoughReaches
  readonly values: FollowerValues
}

const roughColumnOf = ({ frame, needles }: NotedStrip, column: number): RoughColumn => ({
  possible: roughReachesOf(
    frame.bed.spans,
    frame.bed.lastings,
    frame.bed.pushed[column]! & needles.anyShowing,
  ),
  values: valuesOf(needles, followersOf(frame, column, 0)),
})

const setCount = 1 << 3
const slowCount = slowChances.length
const pairCount = roughWears.length * slowCount

type Three<Thing> = readonly [Thing, Thing, Thing]

/** By what three columns reach, the last changes first, and by wear: how likely it is, however slow the strip is. */
const chancesOf = (a: RoughReaches, b: RoughReaches, c: RoughReaches): Float64Array => {
  const [countA, countB, countC] = [a.reaches.length, b.reaches.length, c.reaches.length]
  const chances = new Float64Array(countA * countB * countC * roughWears.length)
  const both = new Float64Array(pairCount)
  let at = 0
  for (let i = 0; i < countA; i++)
    for (let j = 0; j < countB; j++) {
      for (let n = 0; n < pairCount; n++)
        both[n] = slowChances[n % slowCount]!.chance * a.chances[n * countA + i]! * b.chances[n * countB + j]!
      for (let k = 0; k < countC; k++)
        for (let w = 0; w < roughWears.length; w++) {
          let chance = 0
          for (let n = w * slowCount; n < (w + 1) * slowCount; n++)
            chance += both[n]! * c.chances[n * countC + k]!
          chances[at++] = chance
        }
    }
  return chances
}

/** The same, computed once for the same reaches: no note changes them. */
const keptChances = keptFor(chancesOf)

/** By set of still columns and by wear: what a slow strip adds up to, but for the chances of columns that are still or not. */
const slowSets = ([a, b, c]: Three<RoughColumn>): Float64Array => {
  const sums = new Float64Array(setCount * roughWears.length)
  const chances = keptChances(a.possible, b.possible, c.possible)
  let at = 0
  for (const one of a.possible.reaches)
    for (const two of b.possible.reaches)
      for (const three of c.possible.reaches) {
        const set = (one === still ? 1 : 0) | (two === still ? 2 : 0) | (three === still ? 4 : 0)
        const from = at
        at += roughWears.length
        if (set === setCount - 1) continue
        const value =
          a.values.of(one.offers | three.next | two.before) *
          b.values.of(two.offers | one.next | three.before) *
          c.values.of(three.offers | two.next | one.before)
        for (let w = 0; w < roughWears.length; w++)
          sums[set * roughWears.length + w]! += chances[from + w]! * value
      }
  return sums
}

/** By hidden state: what a slow strip adds up to whose columns are sound, worn or dead; with all three still it is as seized. */
export const roughSlowOf = (noted: NotedStrip, strip: number): Float64Array => {
  const numbers = stripColumns(strip)
  const { byHand } = noted.frame.setting
  const { sufficient } = noted.frame.bed.peaks
  const sets = slowSets(
    numbers.map((column) => roughColumnOf(noted, column)) as unknown as Three<RoughColumn>,
  )
  const hands = numbers.map((column) => byHand.columns[column]!)
  const slow = new Float64Array(roughHidden.length)
  for (const [h, { wear, reader }] of roughHidden.entries()) {
    const name = readers[reader]!
    const right = soundColumn(name)
    const weak = (1 - sufficient[wear]!) * right
    const moves = hands.map((hand) => hand.right * right)
    const isStill = hands.map((hand) => hand.dead * columnChances[name].dead + hand.right * weak)
    const w = roughWears.indexOf(wear as (typeof roughWears)[number])
    for (let set = 0; set < setCount - 1; set++) {
      let product = sets[set * roughWears.length + w]!
      for (let n = 0; n < 3; n++) product *= set & (1 << n) ? isStill[n]! : moves[n]!
      slow[h]! += product
    }
  }
  return slow
}
