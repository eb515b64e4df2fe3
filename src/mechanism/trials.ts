import { type Way, wholeBed } from './bed.ts'
import { everyHole } from './card.ts'
import { conditionOf } from './condition.ts'
import { dimensions } from './dimensions.ts'
import type { FaultKindName } from './fault-kinds.ts'
import { margins } from './margins.ts'
import { type Run, runPass } from './pass.ts'
import type { Scenario } from './scenario.ts'
import { scatter } from './wear.ts'

/** What came of trying machines out: shares of 1. */
export interface Trials {
  readonly machines: number
  /** Mean share of the needles under a hole that were selected. */
  readonly share: number
  /** Standard error of that mean: the machines differ, and only so many were tried. */
  readonly error: number
}

/** Kinds of fault that touch every needle alike, which the closed form takes in. */
const covered: ReadonlySet<FaultKindName> = new Set<FaultKindName>([
  'card.side',
  'card.skew',
  'sweep.worn',
  'presser.right.worn',
  'presser.left.worn',
  'gate.1.low',
  'gate.1.high',
  'strip.slow',
])

/** Faults of single holes, of the card's stepping and of turns: none of them is of a needle under a hole. */
const isOfCard = (kind: FaultKindName): boolean =>
  ['card.torn', 'card.blocked', 'card.reversed', 'card.locked'].includes(kind) || /^(pawl|turn)\./.test(kind)

/** Whether nothing is wrong that `chanceOfSelection` leaves aside, such as one part's own fault. */
export const isChanceWhole = ({ scenario }: Run): boolean =>
  scenario.faults.every(({ kind }) => covered.has(kind) || isOfCard(kind) || kind.startsWith('belt.'))

/** How many deviations a free butt must clear the first gate by, so that none slips under it. */
const clear = 5

/**
 * Whether `chanceOfSelection` takes in all that is wrong with a machine in a pass of this way: then trying machines
 * out must agree. It does not know of needles that are selected although no catch held them.
 */
export const isChanceExact = (run: Run, way: Way): boolean => {
  const { scenario } = run
  const free = margins(run, way).find(({ id }) => id === 'freeOverFirst')!.mm
  return (
    scenario.card !== null &&
    isChanceWhole(run) &&
    scenario.faults.every(({ kind }) => !kind.startsWith('belt.')) &&
    free > clear * scatter(scenario.wear).butt
  )
}

/** Needles in whole repeats of the card, so that every column counts alike. */
const trialBed = (() => {
  const over = dimensions.needles % dimensions.columns
  return { first: wholeBed.first + over / 2, last: wholeBed.last - over / 2 }
})()

/** Share of one machine's needles that are selected in a pass of this way, with a hole for each of them. */
const shareOf = (scenario: Scenario, way: Way): number => {
  const condition = conditionOf({ ...scenario, bed: trialBed, card: [everyHole] })
  const { came } = runPass(condition, way === 1 ? 1 : 2)
  const selected = came.reduce((sum, outcome) => sum + Number(outcome === 'selected'), 0)
  return selected / (trialBed.last - trialBed.first + 1)
}

/**
 * Tries machines of the same wear and faults out, each with parts of its own, drawn from seeds 1, 2, 3 …; yields what
 * the first of them came to, and goes on as long as it is asked.
 */
export function* tryMachines({ scenario }: Run, way: Way): Generator<Trials, never> {
  const faults = scenario.faults.filter(({ kind }) => !isOfCard(kind))
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
