import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { type Cause, faultOfCause } from './place.ts'

/**
 * How common each kind of fault is beside the others. Common practice from memory, no source: what is set wrongly and
 * what grows old without use comes first (the card, the turn, the retainer bar, old oil), what has to break comes last.
 * Only the proportions matter: to what looks the same, to the chart of faults, and to practice. The search itself goes
 * by `chances.ts`. Change them to what your own bench sees.
 */
export const howCommon: Readonly<Record<FaultKindName, number>> = {
  'retainer.worn': 20,
  'strip.slow': 10,
  'strip.seized': 10,
  'turn.short': 8,
  'carriage.plain': 8,
  'belt.off': 6,
  'turn.twice': 5,
  'card.locked': 6,
  'card.reversed': 6,
  'card.torn': 6,
  'needle.bent': 6,
  'needle.stiff': 6,
  'pin.low': 6,
  'strip.over': 4,
  'card.blocked': 4,
  'card.side': 3,
  'card.skew': 3,
  'pawl.right': 3,
  'pawl.left': 3,
  'pin.high': 3,
  'belt.slack': 3,
  'needle.gone': 3,
  'pin.over': 2,
  'sweep.worn': 2,
  'rocker.worn': 2,
  'catch.broken': 2,
  'belt.timing': 1.5,
  'rocker.dead': 1,
  'pawl.double': 1,
  'presser.right.worn': 1,
  'presser.left.worn': 1,
  'pin.sticky': 5,
  'pivots.loose': 2,
  'pawl.skips': 2,
  'pawl.jumps': 1,
  'gate.1.low': 0.5,
  'gate.1.high': 0.5,
}

/** How the causes of one way, which no look distinguishes, share its chance: as common as their kinds are; they add up to 1. */
export const sharesOfCauses = (causes: readonly Cause[]): number[] => {
  const weights = causes.map((cause) => {
    const fault = faultOfCause(cause)
    return fault ? howCommon[fault.kind] : 1
  })
  const whole = weights.reduce((sum, weight) => sum + weight, 0)
  return weights.map((weight) => weight / whole)
}
