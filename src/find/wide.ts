import { wayOfPass } from '../mechanism/bed.ts'
import { type Condition, conditionOf, presserOf } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { earlyWindow, lateWindow } from '../mechanism/closed-forms.ts'
import { contradict, type Fault, type FaultId, readFault } from '../mechanism/fault.ts'
import { allColumns } from '../mechanism/indices.ts'
import { holeClearance, holePresented } from '../mechanism/pin.ts'
import { outOfPush } from '../mechanism/rocker.ts'
import { beltLead, fullPush } from '../mechanism/sweep.ts'
import { rowRead } from '../mechanism/turn.ts'
import { blindColumns, gateLowBy, wideChances, wornDip } from './chances.ts'
import type { Look } from './looks.ts'
import { Memo, shortNames } from './memo.ts'
import type { Cause, WidePlace } from './place.ts'
import type { Lastings } from './peaks.ts'
import { lastingIn, type Spans } from './spans.ts'
import { scenarioIn } from './view.ts'

const { strips, columns } = dimensions

/** Something that reaches the whole bed. */
export interface WideCause {
  readonly place: WidePlace
  /** What it may be; no look from outside tells them apart. */
  readonly causes: readonly Cause[]
  /** How the model has it. */
  readonly fault: Fault | null
  readonly chance: number
}

const faultOf = (id: FaultId): Fault => {
  const reading = readFault(id)
  if (reading.kind === 'refused') throw new RangeError(reading.reason)
  return reading.fault
}

const cause = (place: WidePlace, chance: number, id: FaultId, alike: readonly FaultId[] = []): WideCause => ({
  place,
  chance,
  causes: [id, ...alike],
  fault: faultOf(id),
})

/** The askew, in mm a column to two decimals, that leaves so many columns at each end without their holes. */
const skewOf = (blind: number): number => {
  const centre = (columns + 1) / 2
  const least = holeClearance / (centre - blind)
  return (Math.floor(least * 100) + 1) / 100
}

/** How far a belt is out that fails one way, by eights, and both ways, in needles. */
const belt = { oneWay: 0.9, eights: strips, out: 3 } as const

/** Each thing by itself that may reach the whole bed, but for single turns. */
export const wideCauses = (): WideCause[] => {
  const chances = wideChances
  return [
    cause('carriage', chances.carriagePlain, 'carriage.plain'),
    { place: 'card', chance: chances.cardOut, causes: ['card.out'], fault: null },
    cause('card', chances.cardLocked, 'card.locked'),
    cause('card', chances.cardReversed, 'card.reversed'),
    cause('card', chances.cardSide, 'card.side=1.2'),
    ...blindColumns.map((blind) => cause('card', chances.cardSkew, `card.skew=${skewOf(blind)}`)),
    cause('turn', chances.turnTwice, 'turn.twice'),
    cause('turn', chances.pawl, 'pawl.right'),
    cause('turn', chances.pawl, 'pawl.left'),
    cause('turn', chances.pawl, 'pawl.double'),
    cause('belt', chances.beltOff, 'belt.off'),
    cause('belt', chances.beltEights, `belt.timing=${belt.eights}`),
    cause('belt', chances.beltEights, `belt.timing=${-belt.eights}`),
    cause('belt', chances.beltOneWay, `belt.timing=${belt.oneWay}`),
    cause('belt', chances.beltOneWay, `belt.timing=${-belt.oneWay}`),
    cause('belt', chances.beltOut, `belt.timing=${belt.out}`),
    cause('presser', chances.presser, `presser.right.worn=${dimensions.presser - wornDip}`),
    cause('presser', chances.presser, `presser.left.worn=${dimensions.presser - wornDip}`),
    cause('gate', chances.gateHigh, 'gate.1.high=0.5'),
    cause('gate', chances.gateLow, `gate.1.low=${gateLowBy}`),
    cause('sweep', chances.sweep, 'sweep.worn=0.8'),
  ]
}

/** What may have gone wrong at the turn before a pass: the card stayed, or went on by two rows. */
export const turnCauses = (pass: number): WideCause[] => [
  cause('turn', wideChances.turn, `pawl.skips.${pass}`, [`turn.short.${pass}`]),
  cause('turn', wideChances.turn, `pawl.jumps.${pass}`),
]

/** Some of what reaches the whole bed, at once; none for a bed that is right. */
export interface WideState {
  readonly causes: readonly WideCause[]
  readonly chance: number
}

export const rightBed: WideState = { causes: [], chance: wideChances.nothing }

/** One thing by itself. */
export const alone = (one: WideCause): WideState => ({ causes: [one], chance: one.chance })

const isTurn = ({ causes }: WideCause): boolean => /^pawl\.(skips|jumps)\./.test(causes[0] ?? '')

/**
 * A state with one thing more, at its chance; another turn after a first has the chance of a next turn. Null where the
 * two exclude one another.
 */
export const withCause = (state: WideState, more: WideCause): WideState | null => {
  if (state.causes.includes(more)) return null
  for (const { fault, causes } of state.causes) {
    if (fault && more.fault && contradict(fault, more.fault)) return null
    if (causes[0] === 'card.out' && more.place === 'card') return null
    if (more.causes[0] === 'card.out' && state.causes.some(({ place }) => place === 'card')) return null
  }
  const isNext = isTurn(more) && state.causes.some(isTurn)
  const before = state.causes.length === 0 ? 1 : state.chance
  return { causes: [...state.causes, more], chance: before * (isNext ? wideChances.nextTurn : more.chance) }
}

/** How a bed in some state takes part in the looks. A bit a look: look n is bit n. */
export interface WideBed {
  readonly state: WideState
  /** A text that two beds of one setting share where they take part in its looks alike, and only there. */
  readonly key: string
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
  /** How pushes on slow strips last, and in which looks how far. */
  readonly lastings: Lastings
  readonly spans: Spans
  readonly looks: readonly Look[]
}

/** By how many eights a belt moves the pattern, in needles, and how early the sweep then is, in needles of travel. */
const eightsOf = (condition: Condition): number => strips * Math.round(condition.timing / strips)

/** How early the sweep is in a look, in needles of travel, beside where it meets each needle or one so many eights on. */
const earlyIn = (condition: Condition, look: Look): number =>
  beltLead(condition, look.way) - look.way * eightsOf(condition)

/** Whether the sweep moves pins that are up far enough, whenever it does. */
const doesPush = (condition: Condition): boolean =>
  !condition.beltOff &&
  outOfPush(fullPush(condition, dimensions.pinHigh), dimensions.lost) >= dimensions.reach

/** Whether a sweep so early holds each needle's strip from the presser to the first gate. */
const doesMeet = (early: number, speed: number): boolean =>
  early >= -lateWindow && early <= earlyWindow(speed)

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
    ({ view }) => `${view.pass} ${view.speed} ${view.shift} ${view.columnOne} ${view.card?.join()}`,
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
  const faults = state.causes.flatMap(({ fault }) => (fault ? [fault] : []))
  const isOut = state.causes.some(({ causes }) => causes[0] === 'card.out')
  const pushed = new Int32Array(columns)
  let [pushes, meets, holds, all, plain, offset] = [0, 0, 0, 0, 0, 0]
  const early: number[] = []
  const dips: number[] = []
  for (const [n, look] of looks.entries()) {
    const bit = 1 << n
    const view = isOut ? { ...look.view, card: null } : look.view
    const condition = conditionOf(scenarioIn(view, faults))
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
    if (doesMeet(early[n]!, view.speed)) meets |= bit
    const row = rowRead(condition, view.pass)
    for (const column of allColumns)
      if (holePresented(condition, row, column)) pushed[column - 1] = (pushed[column - 1] ?? 0) | bit
  }
  const right = looks.reduce((bits, { way }, n) => (way === 1 ? bits | (1 << n) : bits), 0)
  const lasting = lastingIn(
    looks.map(({ view: { speed } }, n) => ({ speed, early: early[n]! })),
    right,
  )
  return {
    state,
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
    ...lasting,
  }
}
