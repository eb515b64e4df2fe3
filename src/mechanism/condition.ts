import { type Bed, type Way, wayOfPass } from './bed.ts'
import type { Card } from './card.ts'
import { dimensions } from './dimensions.ts'
import type { Fault } from './fault.ts'
import { normalDraw, type Stream } from './random.ts'
import type { Scenario } from './scenario.ts'
import { scatter, wornDimensions } from './wear.ts'

/**
 * The machine as it is: every dimension of every part after wear, scatter and faults. Arrays of columns and strips
 * are indexed from 0 (column 1 at 0), needles from 0 at the left end. Lengths mm, times ms.
 */
export interface Condition {
  readonly card: Card | null
  readonly speed: number
  readonly seed: number
  readonly bed: Bed
  /** Card row and column faults: key of `holeKey` to whether a hole is there now. */
  readonly holes: ReadonlyMap<number, boolean>
  cardSide: number
  cardSkew: number
  cardReversed: boolean
  cardLocked: boolean
  pawlDead: { right: boolean; left: boolean }
  pawlDouble: boolean
  readonly shortTurns: ReadonlySet<number>
  /** Per column: -1 stuck down, +1 stuck up, 0 free. */
  readonly pinStuck: Int8Array
  readonly pinOver: Uint8Array
  /** Per column: the pin's own error in height. */
  readonly pinError: Float64Array
  sweepEdge: number
  timing: number
  slack: number
  readonly rockerDead: Uint8Array
  readonly lost: Float64Array
  /** Per strip: 0 sound, 1 seized, 2 stuck shifted. */
  readonly stripStuck: Uint8Array
  readonly stripReturn: Float64Array
  reach: number
  /** How far the presser dips, moving right and moving left. */
  presser: { right: number; left: number }
  /** Per needle: 1 where no catch can hold it, for the reason named. */
  readonly catchBroken: Uint8Array
  readonly needleBent: Uint8Array
  readonly needleGone: Uint8Array
  /** Per needle: time constant of a stiff butt; 0 where it is not stiff. */
  readonly needleStiff: Float64Array
  readonly catchError: Float64Array
  readonly buttError: Float64Array
  /** Median time constant with a worn retainer bar; 0 where the bar is sound. */
  retainer: number
  gate1: number
}

/** Key of a card's hole in `Condition.holes`: row and column from 1. */
export const holeKey = (row: number, column: number): number => row * 32 + column

/** How far the presser dips a butt in a pass of this way. */
export const presserOf = (condition: Condition, way: Way): number =>
  way === 1 ? condition.presser.right : condition.presser.left

/** Errors drawn for `count` parts; all nought on a machine as new, which is the drawing itself. */
const errors = (scenario: Scenario, stream: Stream, count: number, deviation: number): Float64Array => {
  const drawn = new Float64Array(count)
  if (scenario.wear > 0)
    for (let n = 0; n < count; n++) drawn[n] = deviation * normalDraw(scenario.seed, stream, n)
  return drawn
}

const sound = (scenario: Scenario, holes: Map<number, boolean>, shortTurns: Set<number>): Condition => {
  const { columns, strips, needles } = dimensions
  const worn = wornDimensions(scenario.wear)
  const deviation = scatter(scenario.wear)
  const lost = errors(scenario, 'lost', columns, deviation.lost)
  for (let n = 0; n < columns; n++) lost[n] = Math.max(0, worn.lost + lost[n]!)
  return {
    card: scenario.card,
    speed: scenario.speed,
    seed: scenario.seed,
    bed: scenario.bed,
    holes,
    cardSide: 0,
    cardSkew: 0,
    cardReversed: false,
    cardLocked: false,
    pawlDead: { right: false, left: false },
    pawlDouble: false,
    shortTurns,
    pinStuck: new Int8Array(columns),
    pinOver: new Uint8Array(columns),
    pinError: errors(scenario, 'pin', columns, deviation.pin),
    sweepEdge: worn.sweepEdge,
    timing: 0,
    slack: 0,
    rockerDead: new Uint8Array(columns),
    lost,
    stripStuck: new Uint8Array(strips),
    stripReturn: new Float64Array(strips).fill(dimensions.stripReturn),
    reach: worn.reach,
    presser: { right: worn.presser, left: worn.presser },
    catchBroken: new Uint8Array(needles),
    needleBent: new Uint8Array(needles),
    needleGone: new Uint8Array(needles),
    needleStiff: new Float64Array(needles),
    catchError: errors(scenario, 'catch', needles, deviation.catch),
    buttError: errors(scenario, 'butt', needles, deviation.butt),
    retainer: 0,
    gate1: dimensions.gate1,
  }
}

/** What each kind of fault does to the machine. `n` is its first number as an array index, `mm` its amount. */
const apply = (c: Condition, fault: Fault, holes: Map<number, boolean>, turns: Set<number>): void => {
  const first = fault.at[0] ?? 0
  const n = first - 1
  const amount = fault.amount ?? 0
  switch (fault.kind) {
    case 'card.torn':
    case 'card.blocked':
      holes.set(holeKey(first, fault.at[1]!), fault.kind === 'card.torn')
      break
    case 'card.side':
      c.cardSide += amount
      break
    case 'card.skew':
      c.cardSkew += amount
      break
    case 'card.reversed':
      c.cardReversed = true
      break
    case 'card.locked':
      c.cardLocked = true
      break
    case 'pawl.right':
      c.pawlDead.right = true
      break
    case 'pawl.left':
      c.pawlDead.left = true
      break
    case 'pawl.double':
      c.pawlDouble = true
      break
    case 'turn.short':
      turns.add(first)
      break
    case 'pin.low':
      c.pinStuck[n] = -1
      break
    case 'pin.high':
      c.pinStuck[n] = 1
      break
    case 'pin.over':
      c.pinOver[n] = 1
      break
    case 'sweep.worn':
      c.sweepEdge += amount
      break
    case 'belt.timing':
      c.timing += amount
      break
    case 'belt.slack':
      c.slack += amount
      break
    case 'rocker.dead':
      c.rockerDead[n] = 1
      break
    case 'rocker.worn':
      c.lost[n]! += amount
      break
    case 'strip.seized':
      c.stripStuck[n] = 1
      break
    case 'strip.over':
      c.stripStuck[n] = 2
      break
    case 'strip.slow':
      c.stripReturn[n] = amount
      break
    case 'catch.broken':
      c.catchBroken[first] = 1
      break
    case 'needle.bent':
      c.needleBent[first] = 1
      break
    case 'needle.gone':
      c.needleGone[first] = 1
      break
    case 'presser.right.worn':
      c.presser.right -= amount
      break
    case 'presser.left.worn':
      c.presser.left -= amount
      break
    case 'needle.stiff':
      c.needleStiff[first] = amount
      break
    case 'retainer.worn':
      c.retainer = amount
      break
    case 'gate.1.low':
      c.gate1 += amount
      break
    case 'gate.1.high':
      c.gate1 -= amount
      break
  }
}

/** The machine of a scenario, ready to be asked. Pure: the same scenario gives the same condition. */
export const conditionOf = (scenario: Scenario): Condition => {
  const holes = new Map<number, boolean>()
  const turns = new Set<number>()
  const condition = sound(scenario, holes, turns)
  for (const fault of scenario.faults) apply(condition, fault, holes, turns)
  return condition
}

/** The side at which the turn before pass `pass` happens: the right after an odd pass. */
export const sideOfTurn = (pass: number): 'right' | 'left' => (wayOfPass(pass) === -1 ? 'right' : 'left')
