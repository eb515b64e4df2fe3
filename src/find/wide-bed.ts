import { modulo, type Way, wayOfPass } from '../mechanism/bed.ts'
import { type Condition, conditionOf, presserOf } from '../mechanism/condition.ts'
import { type Dimensions, dimensions as training } from '../mechanism/dimensions.ts'
import type { Fault } from '../mechanism/fault.ts'
import { earlyWindow, lateWindowOf } from '../mechanism/closed-forms.ts'
import { allColumns, type Column, toColumn } from '../mechanism/indices.ts'
import { holePresented } from '../mechanism/pin.ts'
import { fullShift, outOfPush } from '../mechanism/rocker.ts'
import { beltLead, fullPush } from '../mechanism/sweep.ts'
import { rowRead } from '../mechanism/turn.ts'
import type { EachWay } from './layout.ts'
import type { Look } from './looks.ts'
import { Memo, shortNames } from './memo.ts'
import type { Lastings } from './lastings.ts'
import { type Peaks, peaksOf } from './peaks.ts'
import { lastingIn, type Spans } from './spans.ts'
import { dimensionsAt, ownKey, scenarioIn, type View } from './view.ts'
import type { WideState } from './wide-states.ts'

const { strips, columns } = training

/** How a bed in some state takes part in the looks. A bit a look: look n is bit n. */
export interface WideBed {
  readonly state: WideState
  /** A text that two beds of one setting share where they take part in its looks alike, and only there. */
  readonly key: string
  /** A text that two beds of one setting share where each look sorts butts alike, and only there. */
  readonly sorting: string
  /** By column, column 1 first: the looks in which a sound pin under its hole moves its strip far enough. */
  readonly pushed: Int32Array
  /** The looks in which a pin that is up moves its strip, at the right time or not. */
  readonly pushes: number
  /** The looks in which it does so at the right time for its own needles. */
  readonly meets: number
  /** By look: how early the sweep is, in needles of travel. */
  readonly early: readonly number[]
  /** The looks in which a butt that is offered a hold is selected. */
  readonly holds: number
  /** The looks in which every needle with a butt is selected, whatever else. */
  readonly all: number
  /** The looks in which no needle is turned out of its way. */
  readonly plain: number
  /** By look: how far the presser dips, in mm. */
  readonly dips: readonly number[]
  /** By how many needles to the left the pattern is moved: a needle follows the column of the one so far to its right. */
  readonly offset: number
  /** How early the sweep is in looks each way, in needles; 0 for a way that none goes. */
  readonly earlyBy: EachWay
  /** The looks in which a strip that is stuck shifted offers a hold: every one where a full push would, else none. */
  readonly shifted: number
  /** How far pushes shift a strip. */
  readonly peaks: Peaks
  /** How pushes on slow strips last, and in which looks how far. */
  readonly lastings: Lastings
  readonly spans: Spans
  readonly looks: readonly Look[]
}

/** By how many eights a belt moves the pattern, in needles, and how early the sweep then is, in needles of travel. */
const eightsOf = (condition: Condition): number => strips * Math.round(condition.timing / strips)

/** By how many eights slack brings the pattern late, whichever way, in needles. */
const lateEightsOf = (condition: Condition): number => strips * Math.round(condition.slack / 2 / strips)

/** How early the sweep is in a look, in needles of travel, beside where it meets each needle or one so many eights on. */
const earlyIn = (condition: Condition, look: Look): number =>
  beltLead(condition, look.way) - look.way * eightsOf(condition) + lateEightsOf(condition)

/**
 * The column whose pin the sweep passes at a column's needles, where slack brings the pattern late by eights: another one each
 * way. What is wrong with pins is then taken to be so of the columns that their needles follow.
 */
const columnAt = (column: number, condition: Condition, look: Look): Column =>
  toColumn(modulo(column - 1 - look.way * lateEightsOf(condition), columns) + 1)

/** Whether the sweep moves pins that are up far enough, whenever it does. */
const doesPush = (condition: Condition): boolean => {
  const { dimensions, beltOff } = condition
  const push = fullPush(condition, dimensions.pinHigh)
  return !beltOff && outOfPush(dimensions, push, dimensions.lost) >= dimensions.reach
}

/** Whether a sweep so early holds each needle's strip from the presser to the first gate. */
const doesMeet = (early: number, speed: number, dimensions: Dimensions): boolean =>
  early >= -lateWindowOf(dimensions) && early <= earlyWindow(speed, dimensions)

/** The machine with these faults in each view; those at one speed with one card in the reader have the same. */
const conditionsIn = (views: readonly View[], faults: readonly Fault[]): readonly Condition[] => {
  const all: Condition[] = []
  for (const view of views) {
    const alike = views.findIndex(({ card, speed }) => card === view.card && speed === view.speed)
    all.push(all[alike] ?? conditionOf(scenarioIn(view, faults)))
  }
  return all
}

const keyOf = ({ causes }: WideState): string => causes.map((one) => one.causes[0]).join()

/** Beds in some state, by what they depend on beside what was noted. */
const known = new Memo<Omit<WideBed, 'looks'>>(1000)

const viewsName = shortNames(50)
const bedName = shortNames(1000)
const named = new WeakMap<readonly Look[], string>()

/** A short text that two lists of looks share only where they are of the same passes. */
const viewsOf = (looks: readonly Look[]): string => {
  const found = named.get(looks)
  if (found !== undefined) return found
  const views = looks.map(
    ({ view }) =>
      `${view.pass} ${view.speed} ${view.shift} ${view.columnOne} ${ownKey(view)} ${view.card?.join()}`,
  )
  const name = viewsName(views.join())
  named.set(looks, name)
  return name
}

/** A bed in some state, as the model has it in these looks. */
export const wideBedOf = (state: WideState, looks: readonly Look[]): WideBed => ({
  ...known.of(`${keyOf(state)} ${viewsOf(looks)}`, () => bedOf(state, looks)),
  looks,
})

const bedOf = (state: WideState, looks: readonly Look[]): Omit<WideBed, 'looks'> => {
  const dimensions = dimensionsAt(looks[0]?.view ?? {})
  const peaks = peaksOf(dimensions)
  const faults = state.causes.flatMap(({ fault }) => (fault ? [fault] : []))
  const isOut = state.causes.some(({ causes }) => causes[0] === 'card.out')
  const conditions = conditionsIn(
    looks.map(({ view }) => (isOut ? { ...view, card: null } : view)),
    faults,
  )
  const pushed = new Int32Array(columns)
  let [pushes, meets, holds, all, plain, offset] = [0, 0, 0, 0, 0, 0]
  const early: number[] = []
  const dips: number[] = []
  for (const [n, condition] of conditions.entries()) {
    const bit = 1 << n
    const look = looks[n]!
    const { view } = look
    const dip = presserOf(condition, wayOfPass(view.pass))
    dips.push(dip)
    offset = eightsOf(condition)
    if (condition.carriagePlain) plain |= bit
    else if (condition.gate1 <= 0) all |= bit
    else if (dip >= dimensions.catchDepth && dimensions.catchDepth >= condition.gate1) holds |= bit
    else if (condition.gate1 > dip) plain |= bit
    early.push(earlyIn(condition, look))
    if (!doesPush(condition)) continue
    pushes |= bit
    if (doesMeet(early[n]!, view.speed, dimensions)) meets |= bit
    const row = rowRead(condition, view.pass)
    for (const column of allColumns)
      if (holePresented(condition, row, columnAt(column, condition, look)))
        pushed[column - 1] = (pushed[column - 1] ?? 0) | bit
  }
  const right = looks.reduce((bits, { way }, n) => (way === 1 ? bits | (1 << n) : bits), 0)
  const earlyTo = (way: Way): number => early[looks.findIndex((look) => look.way === way)] ?? 0
  const lasting = lastingIn(
    peaks,
    looks.map(({ view: { speed } }, n) => ({ speed, early: early[n]! })),
    right,
  )
  return {
    state,
    sorting: [holds, all, plain, dips].join(),
    key: bedName([pushed, pushes, meets, early, holds, all, plain, dips, offset].map(String).join(' ')),
    pushed,
    pushes,
    meets,
    early,
    holds,
    all,
    plain,
    dips,
    offset,
    earlyBy: { right: earlyTo(1), left: earlyTo(-1) },
    shifted: fullShift(dimensions) >= dimensions.reach ? -1 : 0,
    peaks,
    ...lasting,
  }
}
