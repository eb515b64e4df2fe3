import { type Bed, type CardPlace, type Side, sideOfWay, type Way } from './bed.ts'
import type { Card } from './card.ts'
import { type Dimensions, dimensions as training } from './dimensions.ts'
import { applyFault } from './fault-effects.ts'
import { dimensionsOf } from './own.ts'
import { normalDraw, type Stream } from './random.ts'
import type { Scenario } from './scenario.ts'
import { scatter, wornDimensions } from './wear.ts'

/** Turns of the carriage at which something goes wrong, each by the pass before which it is. */
export interface TurnFaults {
  /** Turned short of the mark. */
  readonly short: ReadonlySet<number>
  /** The pawl missed the card. */
  readonly skipped: ReadonlySet<number>
  /** The pawl moved the card on by two rows. */
  readonly jumped: ReadonlySet<number>
}

/**
 * The machine as it is: every dimension of every part after wear, scatter and faults. Arrays of columns and strips
 * are indexed from 0 (column 1 at 0); those of needles have one entry for each of the bed, from its left end. Lengths mm,
 * times ms.
 */
export interface Condition extends CardPlace {
  /** The machine as it was made, or measured; what wear and faults move of it has a place of its own below. */
  readonly dimensions: Dimensions
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
  /** Whether the belt is not engaged: the sweep and the card stand still. */
  beltOff: boolean
  /** Whether the carriage is not set to pattern: the presser and the gates stand aside. */
  carriagePlain: boolean
  /** Whether the lever is on that reads each row twice on purpose. */
  turnTwice: boolean
  pawlDead: Record<Side, boolean>
  pawlDouble: boolean
  readonly turns: TurnFaults
  /** Per column: one of `pinStates`. */
  readonly pinStuck: Uint8Array
  readonly pinOver: Uint8Array
  /** Per column: chance that old oil keeps the pin from rising at a turn; 0 where it rises freely. */
  readonly pinSticky: Float64Array
  /** Per column: the pin's own error in height. */
  readonly pinError: Float64Array
  sweepEdge: number
  timing: number
  slack: number
  readonly rockerDead: Uint8Array
  readonly lost: Float64Array
  /** How loose pins and rockers are: the deviation of what a push loses each time the sweep comes by. */
  pivotsLoose: number
  /** Per strip: one of `stripStates`. */
  readonly stripStuck: Uint8Array
  readonly stripReturn: Float64Array
  reach: number
  /** How far the presser dips, moving right and moving left. */
  presser: Record<Side, number>
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

/** How far the presser of this machine dipped a butt in a pass of this way before anything wore it. */
export const presserAsMade = ({ dimensions }: Condition, way: Way): number =>
  way === 1 ? dimensions.presserRight : dimensions.presserLeft

/** How far the presser dips a butt in a pass of this way. */
export const presserOf = (condition: Condition, way: Way): number => condition.presser[sideOfWay(way)]

/** Errors drawn for `count` parts; all 0 on a machine as new, which is exactly the drawing. */
const errors = (scenario: Scenario, stream: Stream, count: number, deviation: number): Float64Array => {
  const drawn = new Float64Array(count)
  if (scenario.wear > 0)
    for (let n = 0; n < count; n++) drawn[n] = deviation * normalDraw(scenario.seed, stream, n)
  return drawn
}

const sound = (scenario: Scenario, holes: Map<number, boolean>, turns: TurnFaults): Condition => {
  const { columns, strips } = training
  const dimensions = dimensionsOf(scenario.own)
  const { needles } = dimensions
  const worn = wornDimensions(dimensions, scenario.wear)
  const deviation = scatter(scenario.wear)
  const lost = errors(scenario, 'lost', columns, deviation.lost)
  for (const [n, error] of lost.entries()) lost[n] = Math.max(0, worn.lost + error)
  return {
    dimensions,
    card: scenario.card,
    speed: scenario.speed,
    seed: scenario.seed,
    bed: scenario.bed,
    columnOne: scenario.columnOne,
    holes,
    cardSide: 0,
    cardSkew: 0,
    cardReversed: false,
    cardLocked: false,
    beltOff: false,
    carriagePlain: false,
    turnTwice: false,
    pawlDead: { right: false, left: false },
    pawlDouble: false,
    turns,
    pinStuck: new Uint8Array(columns),
    pinOver: new Uint8Array(columns),
    pinSticky: new Float64Array(columns),
    pinError: errors(scenario, 'pin', columns, deviation.pin),
    sweepEdge: worn.sweepEdge,
    timing: 0,
    slack: 0,
    rockerDead: new Uint8Array(columns),
    lost,
    pivotsLoose: 0,
    stripStuck: new Uint8Array(strips),
    stripReturn: new Float64Array(strips).fill(dimensions.stripReturn),
    reach: worn.reach,
    presser: worn.presser,
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

/** The machine of a scenario, as wear, scatter and faults make it. Pure: the same scenario gives the same condition. */
export const conditionOf = (scenario: Scenario): Condition => {
  const holes = new Map<number, boolean>()
  const turns = { short: new Set<number>(), skipped: new Set<number>(), jumped: new Set<number>() }
  const condition = sound(scenario, holes, turns)
  for (const fault of scenario.faults) applyFault(condition, fault, holes, turns)
  return condition
}
