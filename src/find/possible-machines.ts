import { needleName } from '../mechanism/bed.ts'
import { type Fault, makeFault } from '../mechanism/fault.ts'
import { toColumn, toStrip } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { pivotChances, slowChances } from './chances.ts'
import { columnCause, type NeedleChances, needlesByState, wideCausesOf } from './components.ts'
import type { ByHand } from './by-hand.ts'
import { type DrawnMachine, drawMachines } from './draw-machines.ts'
import { sharesOfCauses } from './how-common.ts'
import { repairOfCause } from './mending.ts'
import {
  type Cause,
  columnPlace,
  faultOfCause,
  needlePlace,
  type Place,
  placeOfFault,
  stripPlace,
} from './place.ts'
import type { RepairId } from './repairs.ts'
import { type Numbers, numbersFrom, pickIndex } from './seeded.ts'
import { stripColumns } from './frame.ts'
import type { BedMachines } from './whole-machines.ts'

/** One thing that is wrong with a machine that may be so. */
export interface Wrong {
  readonly place: Place
  /** What mends it; null for wear, and for what nobody knows. */
  readonly mendedBy: RepairId | null
  /** How the model has it: `out` is no card in the reader, null what it has no word for. */
  readonly fault: Fault | 'out' | null
}

/** A machine that may be so: everything that is wrong with it. */
export type PossibleMachine = readonly Wrong[]

const wrongBy = (place: Place, cause: Cause): Wrong => ({
  place,
  mendedBy: repairOfCause(place, cause),
  fault: cause === 'card.out' ? 'out' : faultOfCause(cause),
})

const wideWrongs = (machine: DrawnMachine, next: Numbers): Wrong[] =>
  wideCausesOf(machine, next).map((cause): Wrong => {
    const fault = faultOfCause(cause)
    if (!fault) return wrongBy('card', cause)
    const { mm } = at(pivotChances, machine.hidden.pivots)
    return fault.kind === 'pivots.loose' && mm > 0
      ? wrongBy('pivots', `pivots.loose=${mm}`)
      : wrongBy(placeOfFault(fault), cause)
  })

const stripWrongs = ({ strips }: DrawnMachine, index: number, next: Numbers): Wrong[] => {
  const { state, slow, columns } = at(strips, index)
  const strip = toStrip(index + 1)
  const name = `strip.${strip}` as const
  const own: Cause[] =
    state === 'right'
      ? []
      : [state === 'slow' ? `${name}.slow=${at(slowChances, slow).ms}` : `${name}.${state}`]
  return [
    ...own.map((cause) => wrongBy(stripPlace(strip), cause)),
    ...stripColumns(index).flatMap((from, n): Wrong[] => {
      const column = toColumn(from + 1)
      const place = columnPlace(column)
      const drawn = at(columns, n)
      // What wear has used up passes nothing on, and nothing here mends it.
      if (drawn.state === 'worn')
        return [{ place, mendedBy: null, fault: makeFault('rocker.dead', [column], null) }]
      return columnCause(column, drawn, next).map((cause) => wrongBy(place, cause))
    }),
  ]
}

/** How causes that no look distinguishes share what a needle has, by how common they are and by what a hand found. */
const sharesByHand = (byHand: ByHand, causes: readonly Cause[]): number[] =>
  sharesOfCauses(causes).map((share, n) => share * byHand.causes([at(causes, n)], causes))

const needleWrongs = (needles: readonly NeedleChances[], byHand: ByHand, next: Numbers): Wrong[] =>
  needles.flatMap(({ needle, right, noHold, stiff, gone, other }): Wrong[] => {
    const name = needleName(needle)
    const ways: readonly (readonly Cause[])[] = [
      [],
      [`catch.${name}.broken`, `needle.${name}.bent`],
      [`needle.${name}.stiff`],
      [`needle.${name}.gone`],
      ['other'],
    ]
    const causes = at(ways, pickIndex([right, noHold, stiff, gone, other], next))
    if (causes.length === 0) return []
    const cause = at(causes, pickIndex(sharesByHand(byHand, causes), next))
    return [wrongBy(needlePlace(needle), cause)]
  })

/**
 * Machines drawn at random from what is still possible, each as likely as the sums have it, the same for the same seed.
 * Needles are drawn one by one, each as likely wrong as the state of the whole bed leaves it.
 */
export const possibleMachines = (
  beds: readonly BedMachines[],
  count: number,
  seed: number,
): PossibleMachine[] => {
  const next = numbersFrom(seed)
  const needles = new Map(needlesByState(beds).map((one) => [one.state, one.needles]))
  return drawMachines(beds, count, seed).map((machine) => [
    ...wideWrongs(machine, next),
    ...machine.strips.flatMap((_, strip) => stripWrongs(machine, strip, next)),
    ...needleWrongs(needles.get(machine.bed.state) ?? [], machine.bed.sums.frame.setting.byHand, next),
  ])
}
