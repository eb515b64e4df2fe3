import { dimensions } from '../mechanism/dimensions.ts'
import { type Fault, type FaultId, readFault } from '../mechanism/fault.ts'
import { holeClearance } from '../mechanism/pin.ts'
import { beltOuts, blindColumns, gateLowBy, wideChances, wornDip } from './chances.ts'
import type { Cause, WidePlace } from './place.ts'

const { strips, columns } = dimensions

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
const skewOf = (blind: number): number => {
  const centre = (columns + 1) / 2
  const least = holeClearance(dimensions) / (centre - blind)
  return (Math.floor(least * 100) + 1) / 100
}

/** How far a belt is out that fails one way, and by eights, in needles. */
const belt = { oneWay: 0.9, eights: strips } as const

/** How a belt may be out both ways. */
const outBelts: readonly FaultId[] = [
  ...beltOuts.teeth.map((amount): FaultId => `belt.timing=${amount}`),
  ...beltOuts.play.map((amount): FaultId => `belt.slack=${amount}`),
]

/** Each thing by itself that may reach the whole bed, but for single turns. */
export const wideCauses = (): WideCause[] => {
  const chances = wideChances
  return [
    cause('carriage', chances.carriagePlain, 'carriage.plain'),
    { place: 'card', chance: chances.cardOut, causes: ['card.out'], fault: null },
    cause('card', chances.cardLocked, 'card.locked'),
    cause('card', chances.cardReversed, 'card.reversed'),
    cause('card', chances.cardSide, 'card.side=1.2'),
    ...blindColumns.map((blind) => cause('card', chances.cardSkew, `card.skew=${skewOf(blind)}`)),
    cause('turn', chances.turnTwice, 'turn.twice'),
    cause('turn', chances.pawl, 'pawl.right'),
    cause('turn', chances.pawl, 'pawl.left'),
    cause('turn', chances.pawl, 'pawl.double'),
    cause('belt', chances.beltOff, 'belt.off'),
    cause('belt', chances.beltEights, `belt.timing=${belt.eights}`),
    cause('belt', chances.beltEights, `belt.timing=${-belt.eights}`),
    cause('belt', chances.beltOneWay, `belt.timing=${belt.oneWay}`),
    cause('belt', chances.beltOneWay, `belt.timing=${-belt.oneWay}`),
    ...outBelts.map((id) => cause('belt', chances.beltOut / outBelts.length, id)),
    cause('presser', chances.presser, `presser.right.worn=${dimensions.presserRight - wornDip}`),
    cause('presser', chances.presser, `presser.left.worn=${dimensions.presserRight - wornDip}`),
    cause('gate', chances.gateHigh, 'gate.1.high=0.5'),
    cause('gate', chances.gateLow, `gate.1.low=${gateLowBy}`),
    cause('sweep', chances.sweep, 'sweep.worn=0.8'),
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
