import { wayOfPass, type Way } from '../../mechanism/bed.ts'
import type { Card } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { at } from '../../mechanism/lookup.ts'
import { testedCard } from './bed-faults.ts'
import { type Draws, drawsOf } from './draws.ts'
import { kindsInTurn, type MachineKind, troubleOf } from './kinds.ts'

/** A pass over a machine on the bench. */
export interface Look {
  readonly row: number
  readonly way: Way
  /** mm/s. */
  readonly speed: number
  /** The pass as it is noted, from 1: the same row again the same way is the same pass. */
  readonly pass: number
  /** The pass of the model: another one for the same row again, so that what differs from pass to pass is drawn again. */
  readonly modelPass: number
}

/** A machine, and the passes that were made over it with one card. */
export interface Machine {
  readonly card: Card
  readonly isCardOut: boolean
  readonly faults: readonly Fault[]
  readonly wear: number
  readonly seed: number
  readonly looks: readonly Look[]
}

/** A machine of one of the kinds that come to the bench. */
export interface BenchMachine extends Machine {
  readonly kind: MachineKind
}

const mostFaults = 12
/** Speeds of looks, in mm/s. */
const speeds = { usual: 500, fast: 900 } as const

/** How often the first rows are looked at again, fast. */
const againChance = 0.65

const lookAt = (pass: number, speed: number, modelPass: number): Look => ({
  row: pass,
  way: wayOfPass(pass),
  speed,
  pass,
  modelPass,
})

/** Every row of a card with an even number of rows at the usual speed, and the first so many again, fast. */
export const looksAt = ({ length }: Card, again: number): Look[] => [
  ...Array.from({ length }, (_, n) => lookAt(n + 1, speeds.usual, n + 1)),
  // However many rows the turns at each side step the card by, after two rounds of its passes it is where it was.
  ...Array.from({ length: again }, (_, n) => lookAt(n + 1, speeds.fast, n + 1 + 2 * length)),
]

const machineFrom = (draws: Draws, kind: MachineKind): BenchMachine => {
  const card = testedCard(draws)
  const { faults, wear, isCardOut = false } = troubleOf(kind, draws, card)
  return {
    kind,
    card,
    isCardOut,
    faults: faults.slice(0, mostFaults),
    wear: Math.round(wear * 100) / 100,
    seed: draws.whole(1, 0x7fffffff),
    looks: looksAt(card, draws.is(againChance) ? 2 : 0),
  }
}

/** So many machines of a bench, which its seed names: a whole number below 1000. The kinds come in turn. */
export const machinesOf = (seed: number, count: number): BenchMachine[] =>
  Array.from({ length: count }, (_, n) =>
    machineFrom(drawsOf(seed * 1_000_000 + n), at(kindsInTurn, n % kindsInTurn.length)),
  )
