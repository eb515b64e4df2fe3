import { columnOfNeedle, usualPlace } from '../mechanism/bed.ts'
import { type Card, everyHole } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Fault, indexKindsOf, makeFault } from '../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { type Pass, startRun } from '../mechanism/pass.ts'
import { toNeedle } from '../mechanism/indices.ts'
import { soundScenario } from '../mechanism/scenario.ts'

/** The cards that a look may be taken with. */
type LookCard = 'pattern' | 'holes' | 'blank'

/** One look at the bed: a pass with a card, one way, at a speed in mm/s. */
export interface Look {
  readonly card: LookCard
  readonly pass: number
  readonly speed: number
}

/**
 * A slow hand, the ordinary speed, and a fast one, in mm/s. Nobody is asked to go faster than 900, the whole bed in a second:
 * a carriage that meets something then breaks more than it finds.
 */
export const speeds = { slow: 90, ordinary: dimensions.speed, fast: 900 } as const

/** A pass at this speed in mm/s, or slower, shows whether the carriage runs freely. */
export const slowHand = 150

/** The ways of looking that a repairer has without opening anything, the plainest first. */
export const standardLooks: readonly Look[] = [
  { card: 'pattern', pass: 1, speed: speeds.ordinary },
  { card: 'pattern', pass: 2, speed: speeds.ordinary },
  { card: 'pattern', pass: 3, speed: speeds.ordinary },
  { card: 'pattern', pass: 4, speed: speeds.ordinary },
  { card: 'holes', pass: 1, speed: speeds.ordinary },
  { card: 'blank', pass: 1, speed: speeds.ordinary },
  { card: 'holes', pass: 2, speed: speeds.ordinary },
  { card: 'blank', pass: 2, speed: speeds.ordinary },
  { card: 'pattern', pass: 1, speed: speeds.slow },
  { card: 'pattern', pass: 1, speed: speeds.fast },
  { card: 'blank', pass: 1, speed: speeds.fast },
  { card: 'blank', pass: 1, speed: speeds.slow },
]

/** The needle that examples are about, R12: its column has a hole in the main card's first row, and the next of its strip none. */
export const exampleNeedle = 111

/** A kind of fault at an amount, about a needle, its column and its strip, and about a card row, numbered from 1. */
export const faultAbout = (
  kind: FaultKindName,
  needle: number,
  row: number,
  amount: number | null = faultKinds[kind].amount?.usual ?? null,
): Fault => {
  const column = columnOfNeedle(toNeedle(needle), usualPlace)
  const places = { row, column, strip: ((column - 1) % dimensions.strips) + 1, pass: 2, needle }
  return makeFault(
    kind,
    indexKindsOf(kind).map((place) => places[place]),
    amount,
  )
}

/** An example of a kind of fault, at its usual amount unless another is given, all about the same needle. */
export const exampleOf = (kind: FaultKindName, amount?: number): Fault =>
  faultAbout(kind, exampleNeedle, 1, amount)

/** Rows of a card that is all holes or all blank: enough that a fault in one row is seen to be in one row. */
const rowsOfPlain = 4

/** What one look shows of a machine with these faults; `pattern` is the patterned card's rows, `seed` what its chances go by. */
export const lookAt = (faults: readonly Fault[], look: Look, pattern: Card, seed = 1): Pass => {
  const card: Card =
    look.card === 'pattern'
      ? pattern
      : new Array<number>(rowsOfPlain).fill(look.card === 'holes' ? everyHole : 0)
  return startRun({ ...soundScenario(card), faults, speed: look.speed, seed }).passOf(look.pass)
}
