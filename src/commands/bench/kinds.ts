import type { Card } from '../../mechanism/card.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultOf } from '../../mechanism/read-fault.ts'
import { bedFault, holeFault, settingFault } from './bed-faults.ts'
import type { Draws } from './draws.ts'
import {
  barFault,
  barFaults,
  columnFaults,
  gummed,
  needleFaults,
  stripFault,
  stripFaults,
} from './part-faults.ts'

/** What is wrong with a machine that came to the bench. */
interface Trouble {
  readonly faults: readonly Fault[]
  /** From 0 to 1. */
  readonly wear: number
  readonly isCardOut?: boolean
}

/** Wear of a machine that is not worn: mostly none, at most 0.4. */
const littleWear = ({ is, between }: Draws): number => (is(0.5) ? 0 : between(0.05, 0.4))

type Single = (draws: Draws, card: Card) => Fault[]

/** Of one fault: how often it is of a strip, a column, a needle, the whole bed, the bar, or a hole of the card. */
const singles: readonly (readonly [times: number, of: Single])[] = [
  [6, (draws) => [stripFault(draws)]],
  [6, (draws) => columnFaults(draws, 1)],
  [6, (draws) => needleFaults(draws, 1)],
  [2, (draws) => [bedFault(draws)]],
  [1, (draws) => [barFault(draws)]],
  [1, (draws, card) => [holeFault(draws, card)]],
]

const single = singles.flatMap(([times, of]) => new Array<Single>(times).fill(of))

/** The kinds of machines that come to the bench. */
const kinds = {
  'one fault': (draws, card) => ({ faults: draws.pick(single)(draws, card), wear: littleWear(draws) }),
  'old oil': (draws) => ({
    faults: [
      ...stripFaults(draws, { slow: 0.12, seized: 0.09, over: 0.03 }),
      ...columnFaults(draws, draws.whole(0, 3)),
      ...needleFaults(draws, draws.whole(0, 5)),
      ...barFaults(draws, 0.25),
    ],
    wear: littleWear(draws),
  }),
  'set oil': (draws) => ({
    faults: [
      ...stripFaults(draws, { slow: 0.32, seized: 0.28, over: 0.06 }),
      ...columnFaults(draws, draws.whole(0, 2)),
      ...needleFaults(draws, draws.whole(0, 3)),
      ...barFaults(draws, 0.2),
    ],
    wear: littleWear(draws),
  }),
  'gummed pins': (draws) => ({
    faults: [
      ...columnFaults(draws, draws.whole(3, 8), gummed),
      ...stripFaults(draws, { slow: 0.04, seized: 0.04, over: 0.03 }),
      ...needleFaults(draws, draws.whole(0, 2)),
      ...barFaults(draws, 0.2),
    ],
    wear: littleWear(draws),
  }),
  worn: (draws) => ({
    faults: [
      ...stripFaults(draws, { slow: 0.06, seized: 0.04, over: 0.01 }),
      ...columnFaults(draws, draws.whole(0, 2)),
      ...needleFaults(draws, draws.whole(0, 4)),
      ...barFaults(draws, 0.25),
    ],
    wear: draws.between(0.6, 0.9),
  }),
  'one of the whole bed': (draws) => ({
    faults: [
      bedFault(draws),
      ...stripFaults(draws, { slow: 0.05, seized: 0.05, over: 0.01 }),
      ...columnFaults(draws, draws.whole(0, 2)),
      ...needleFaults(draws, draws.whole(0, 4)),
    ],
    wear: littleWear(draws),
  }),
  'rattling pivots': (draws) => ({
    faults: [
      faultOf(`pivots.loose=${draws.whole(4, 11) / 20}`),
      ...columnFaults(draws, draws.whole(0, 2)),
      ...needleFaults(draws, draws.whole(0, 3)),
      ...barFaults(draws, 0.2),
    ],
    wear: littleWear(draws),
  }),
  'a setting': (draws) => {
    const fault = settingFault(draws)
    return { faults: fault ? [fault] : [], isCardOut: fault === null, wear: littleWear(draws) }
  },
  sound: (draws) => ({ faults: [], wear: littleWear(draws) }),
} satisfies Record<string, (draws: Draws, card: Card) => Trouble>

/** A kind of machine that comes to the bench. */
export type MachineKind = keyof typeof kinds

/** The kinds in the turn in which they come: set oil, the commonest trouble, twice. */
export const kindsInTurn: readonly MachineKind[] = [...(Object.keys(kinds) as MachineKind[]), 'set oil']

/** What is wrong with a machine of a kind that is tried with a card. */
export const troubleOf: (kind: MachineKind, draws: Draws, card: Card) => Trouble = (kind, draws, card) =>
  kinds[kind](draws, card)
