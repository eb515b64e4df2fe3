import { type Bed, type Way, wholeBedOf } from './bed.ts'
import { everyHole } from './card.ts'
import { conditionOf } from './condition.ts'
import type { FaultKindName } from './fault-kinds.ts'
import { toNeedle } from './indices.ts'
import { marginOf, margins } from './margins.ts'
import { dimensionsOf } from './own.ts'
import { type Run, runPass } from './pass.ts'
import type { Scenario } from './scenario.ts'
import { scatter } from './wear.ts'

/** The result of trying machines out: shares of 1. */
export interface Trials {
  readonly machines: number
  /** Mean share of the needles under a hole that were selected. */
  readonly share: number
  /** Standard error of that mean: the machines differ, and only so many were tried. */
  readonly error: number
}

/**
 * How each kind of fault bears on `chanceOfSelection`: the closed form takes in what touches every needle alike; the
 * belt it takes in, but not to the last digit; of the card, its stepping and turns no needle under a hole knows; and
 * one part's own fault it leaves aside.
 */
const bearing: Readonly<Record<FaultKindName, 'covered' | 'belt' | 'card' | 'aside'>> = {
  'card.torn': 'card',
  'card.blocked': 'card',
  'card.side': 'covered',
  'card.skew': 'covered',
  'card.reversed': 'card',
  'card.locked': 'card',
  'pawl.right': 'card',
  'pawl.left': 'card',
  'pawl.double': 'card',
  'pawl.skips': 'card',
  'pawl.jumps': 'card',
  'turn.short': 'card',
  'turn.twice': 'card',
  'carriage.plain': 'covered',
  'pin.low': 'aside',
  'pin.high': 'aside',
  'pin.sticky': 'aside',
  'pin.over': 'aside',
  'sweep.worn': 'covered',
  'belt.off': 'covered',
  'belt.timing': 'belt',
  'belt.slack': 'belt',
  'pivots.loose': 'covered',
  'rocker.dead': 'aside',
  'rocker.worn': 'aside',
  'strip.seized': 'aside',
  'strip.over': 'aside',
  'strip.slow': 'covered',
  'catch.broken': 'aside',
  'needle.bent': 'aside',
  'needle.gone': 'aside',
  'presser.right.worn': 'covered',
  'presser.left.worn': 'covered',
  'needle.stiff': 'aside',
  'retainer.worn': 'aside',
  'gate.1.low': 'covered',
  'gate.1.high': 'covered',
}

/** Whether nothing is wrong that `chanceOfSelection` leaves aside, such as one part's own fault. */
export const isChanceWhole = ({ scenario }: Run): boolean =>
  scenario.faults.every(({ kind }) => bearing[kind] !== 'aside')

/** How many deviations a free butt must clear the first gate by, so that none slips under it. */
const clear = 5

/**
 * Whether `chanceOfSelection` takes in all that is wrong with a machine in a pass of this way: then trying machines
 * out must agree. It does not know of needles that are selected although no catch held them.
 */
export const isChanceExact = (run: Run, way: Way): boolean => {
  const { scenario } = run
  const free = marginOf(margins(run, way), 'freeOverFirst').mm
  return (
    scenario.card !== null &&
    isChanceWhole(run) &&
    scenario.faults.every(({ kind }) => bearing[kind] !== 'belt') &&
    free > clear * scatter(scenario.wear).butt
  )
}

/** The needles of a bed in whole repeats of the card, so that every column counts alike. */
const trialBed = ({ own }: Scenario): Bed => {
  const { needles, columns } = dimensionsOf(own)
  const { first, last } = wholeBedOf(needles)
  const over = (needles % columns) / 2
  return { first: toNeedle(first + over), last: toNeedle(last - over) }
}

/** Share of one machine's needles that are selected in a pass of this way, with a hole for each of them. */
const shareOf = (scenario: Scenario, way: Way): number => {
  const bed = trialBed(scenario)
  const condition = conditionOf({ ...scenario, bed, card: [everyHole] })
  const { came } = runPass(condition, way === 1 ? 1 : 2)
  const selected = came.reduce((sum, outcome) => sum + Number(outcome === 'selected'), 0)
  return selected / (bed.last - bed.first + 1)
}

/**
 * Tries machines of the same wear and faults out, each with parts of its own, drawn from seeds 1, 2, 3 …; yields the
 * result of the first so many, and goes on as long as it is read.
 */
export function* tryMachines({ scenario }: Run, way: Way): Generator<Trials, never> {
  const faults = scenario.faults.filter(({ kind }) => bearing[kind] !== 'card')
  let sum = 0
  let squares = 0
  for (let machines = 1; ; machines++) {
    const share = shareOf({ ...scenario, faults, seed: machines }, way)
    sum += share
    squares += share * share
    const mean = sum / machines
    const variance = machines > 1 ? Math.max(0, squares - machines * mean * mean) / (machines - 1) : 0
    yield { machines, share: mean, error: Math.sqrt(variance / machines) }
  }
}
