import type { Fault, FaultOf } from '../../mechanism/fault.ts'
import { outcomeLetters } from '../../mechanism/gate.ts'
import { at } from '../../mechanism/lookup.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import { type Place, placeOfFault } from '../../find/place.ts'
import type { Machine } from './machine.ts'

/** What is wrong with a machine: each place, with the number of notes that would be others were it alone mended. */
export type Truth = ReadonlyMap<Place, number>

/** Whether a fault is in one turn only, that before the pass of its index. */
const isOfOneTurn = (fault: Fault): fault is FaultOf<'pawl.skips' | 'pawl.jumps' | 'turn.short'> =>
  fault.kind === 'pawl.skips' || fault.kind === 'pawl.jumps' || fault.kind === 'turn.short'

/** The faults that there are by a pass: what happens once, at a later turn, is no part of it. */
const faultsBy = (pass: number, faults: readonly Fault[]): Fault[] =>
  faults.filter((fault) => !isOfOneTurn(fault) || fault.at[0] <= pass)

/** What a machine really does in its looks: a letter a needle for each. */
export const bedsOf = ({ card, isCardOut, faults, wear, seed, looks }: Machine): string[] =>
  looks.map(({ speed, pass, modelPass }) =>
    startRun({
      ...soundScenario(isCardOut ? null : card),
      faults: faultsBy(pass, faults),
      speed,
      wear,
      seed,
    })
      .passOf(modelPass)
      .came.map((outcome) => outcomeLetters[outcome])
      .join(''),
  )

const differences = (one: readonly string[], other: readonly string[]): number =>
  one.reduce(
    (sum, bed, n) =>
      sum + Array.from(bed).filter((letter, needle) => letter !== at(at(other, n), needle)).length,
    0,
  )

/** The machine with all that is wrong at one place put right. */
const mended = (machine: Machine, place: Place): Machine => ({
  ...machine,
  isCardOut: machine.isCardOut && place !== 'card',
  faults: machine.faults.filter((fault) => placeOfFault(fault) !== place),
})

/** What is wrong with a machine, by place. */
export const truthOf = (machine: Machine): Truth => {
  const places = new Set(machine.faults.map(placeOfFault))
  if (machine.isCardOut) places.add('card')
  const beds = bedsOf(machine)
  return new Map([...places].map((place) => [place, differences(beds, bedsOf(mended(machine, place)))]))
}
