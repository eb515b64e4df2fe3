import { type Dimensions, dimensions as training } from '../mechanism/dimensions.ts'
import type { Fault, FaultId } from '../mechanism/fault.ts'
import { readFault } from '../mechanism/read-fault.ts'
import { holeClearance } from '../mechanism/pin.ts'
import { beltOuts, blindColumns, wideChances } from './chances.ts'
import type { Cause, WidePlace } from './place.ts'
import { amountsFor } from './wide-amounts.ts'

const { strips, columns } = training

/** Something that reaches the whole bed. */
export interface WideCause {
  readonly place: WidePlace
  /** What it may be; no look from outside distinguishes them. */
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
const skewOf = (dimensions: Dimensions, blind: number): number => {
  const centre = (columns + 1) / 2
  const least = holeClearance(dimensions) / (centre - blind)
  return (Math.floor(least * 100) + 1) / 100
}

/** How a belt may be out both ways. */
const outBelts: readonly FaultId[] = [
  ...beltOuts.teeth.map((amount): FaultId => `belt.timing=${amount}`),
  ...beltOuts.play.map((amount): FaultId => `belt.slack=${amount}`),
]

/** Each thing by itself that may reach the whole bed of a machine of some dimensions, but for single turns. */
export const wideCauses = (dimensions: Dimensions = training): WideCause[] => {
  const chances = wideChances
  const amounts = amountsFor(dimensions)
  return [
    cause('carriage', chances.carriagePlain, 'carriage.plain'),
    { place: 'card', chance: chances.cardOut, causes: ['card.out'], fault: null },
    cause('card', chances.cardLocked, 'card.locked'),
    cause('card', chances.cardReversed, 'card.reversed'),
    cause('card', chances.cardSide, `card.side=${amounts.side}`),
    ...blindColumns.map((blind) => cause('card', chances.cardSkew, `card.skew=${skewOf(dimensions, blind)}`)),
    cause('turn', chances.turnTwice, 'turn.twice'),
    cause('turn', chances.pawl, 'pawl.right'),
    cause('turn', chances.pawl, 'pawl.left'),
    cause('turn', chances.pawl, 'pawl.double'),
    cause('belt', chances.beltOff, 'belt.off'),
    cause('belt', chances.beltEights, `belt.timing=${strips}`),
    cause('belt', chances.beltEights, `belt.timing=${-strips}`),
    cause('belt', chances.beltOneWay, `belt.timing=${amounts.beltOneWay}`),
    cause('belt', chances.beltOneWay, `belt.timing=${-amounts.beltOneWay}`),
    ...outBelts.map((id) => cause('belt', chances.beltOut / outBelts.length, id)),
    cause('presser', chances.presser, `presser.right.worn=${amounts.presserRight}`),
    cause('presser', chances.presser, `presser.left.worn=${amounts.presserLeft}`),
    cause('gate', chances.gateHigh, `gate.1.high=${amounts.gateHigh}`),
    cause('gate', chances.gateLow, `gate.1.low=${amounts.gateLow}`),
    cause('sweep', chances.sweep, `sweep.worn=${amounts.sweep}`),
  ]
}

/**
 * What may have gone wrong at the turn before a pass: the card stayed, or went on by two rows; or at one of so many turns
 * before it, between which nothing was noted.
 */
export const turnCauses = (pass: number, turns = 1): WideCause[] => [
  cause('turn', turns * wideChances.turn, `pawl.skips.${pass}`, [`turn.short.${pass}`]),
  cause('turn', turns * wideChances.turn, `pawl.jumps.${pass}`),
]
