import type { FaultKindName } from '../mechanism/fault-kinds.ts'
import { groupBy, type Entry } from './dictionary.ts'

/**
 * How common each kind of fault is beside the others. Common practice from memory, no source: what is set wrongly and
 * what grows old without use comes first (the card, the turn, the retainer bar, old oil), what has to break comes last.
 * Only the proportions matter. Change them to what your own bench sees.
 */
export const common: Readonly<Record<FaultKindName, number>> = {
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

/**
 * How likely a machine is to have no fault, one, two, or something that is in no dictionary, before anything is seen.
 * Common practice from memory, no source. They add up to 1.
 */
export const shares = { sound: 0.5, one: 0.46, two: 0.03, unknown: 0.01 } as const

/**
 * The chance that a needle is noted wrongly. Common practice from memory, no source. `sure`: by somebody who looks at
 * each needle of the bed, which is what the page asks for; a page and a file that say nothing else have this one. It is
 * this small because the shares above give any one needle's own fault little chance: one needle missed in one pass of 200
 * is then a slip of the pen with 0.24 only, where a slip of 0.005 or 0.01 gives 0.72 or 0.75, and a bent needle would be
 * taken for a slip. `rough`: marked in passing.
 */
export const slips = { sure: 0.0002, rough: 0.01 } as const

/** Each entry's share among single faults, in the entries' order: its kind's, spread evenly over the kind's entries. */
export const weightsOf = (entries: readonly Entry[]): Float64Array => {
  const kinds = groupBy(entries, ({ fault }) => fault.kind)
  const total = kinds.reduce((sum, [first]) => sum + common[first!.fault.kind], 0)
  const counts = new Map(kinds.map((members) => [members[0]!.fault.kind, members.length]))
  return Float64Array.from(entries, ({ fault: { kind } }) => common[kind] / total / counts.get(kind)!)
}
