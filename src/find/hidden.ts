import { dimensions } from '../mechanism/dimensions.ts'
import type { ByHand } from './by-hand.ts'
import { pivotChances, readerChances, readers, retainerChances, retainerMs, wearChances } from './chances.ts'
import type { Oil } from './finding.ts'
import { keptFor } from './kept.ts'
import { logSum } from './log-sum.ts'
import { oilStates, type StripStates } from './oil-states.ts'

const { strips } = dimensions

/** What is hidden of a machine beside its bed's state and its oil: indices in the tables of wear, pivots and readers. */
export interface Hidden {
  readonly wear: number
  readonly pivots: number
  readonly reader: number
}

/** Every hidden state of these wears, with or without loose pivots; the reader changes first. */
export const hiddenOf = (wears: readonly number[], isLoose: boolean): Hidden[] =>
  wears.flatMap((wear) =>
    (isLoose ? [...pivotChances.keys()] : [0]).flatMap((pivots) =>
      readers.map((_, reader) => ({ wear, pivots, reader })),
    ),
  )

/** What a strip adds up to, by its own state and by hidden state. */
export interface StripSums {
  /** The log of what all this is measured in. */
  readonly log: number
  readonly seized: number
  readonly over: number
  /** By index of the hidden state: following at once, and slow, however slow. */
  readonly fast: Float64Array
  readonly slow: Float64Array
}

/** The chances of a strip's states, by how the oil lies and by what was found by hand. */
export const stripChancesOf = (
  byHand: ByHand,
  strip: number,
  { slow, seized, over }: StripStates,
): { sound: number; slow: number; seized: number; over: number } => {
  const hand = byHand.strips[strip]!
  return {
    sound: hand.right * (1 - slow - seized - over),
    slow: hand.slow * slow,
    seized: hand.seized * seized,
    over: hand.over * over,
  }
}

/** The chance of a retainer bar in a state, by the oil. */
const retainerChance = (byHand: ByHand, retainer: number, oil: Oil): number =>
  retainer < 0
    ? byHand.right(['retainer.worn=8']) * (1 - retainerChances[oil])
    : (byHand.causes(['retainer.worn=8'], ['retainer.worn=8']) * retainerChances[oil]) / retainerMs.length

const pivotChance = (byHand: ByHand, pivots: number): number => {
  const { mm, chance } = pivotChances[pivots]!
  return (
    chance *
    (mm > 0 ? byHand.causes(['pivots.loose=0.4'], ['pivots.loose=0.4']) : byHand.right(['pivots.loose=0.4']))
  )
}

/** The logs of the chances of hidden states with each oil before anything is seen, oil first. */
const chanceLogs = (byHand: ByHand, retainer: number, hidden: readonly Hidden[]): Float64Array => {
  const pivots = pivotChances.map((_, n) => pivotChance(byHand, n))
  const logs = new Float64Array(oilStates.length * hidden.length)
  for (const [o, { oil, chance: ofOil }] of oilStates.entries()) {
    const before = byHand.oil[oil] * ofOil * retainerChance(byHand, retainer, oil)
    for (const [h, one] of hidden.entries()) {
      const { wear, chance } = wearChances[one.wear]!
      logs[o * hidden.length + h] = Math.log(
        before * byHand.wear(wear) * chance * pivots[one.pivots]! * readerChances[readers[one.reader]!],
      )
    }
  }
  return logs
}

/** The same, computed once for the same hidden states and the same that was found by hand. */
const keptChanceLogs = keptFor(chanceLogs)

/** The logs of the weights of hidden states with each oil, oil first, as far as strips were added. */
export class Weighing {
  readonly logs: Float64Array
  private readonly byHand: ByHand

  constructor(byHand: ByHand, retainer: number, hidden: readonly Hidden[]) {
    this.byHand = byHand
    this.logs = keptChanceLogs(byHand, retainer, hidden).slice()
  }

  /** Adds what a strip adds up to. */
  add(strip: number, { log, seized, over, fast, slow }: StripSums): void {
    for (const [o, oil] of oilStates.entries()) {
      const chances = stripChancesOf(this.byHand, strip, oil.strips)
      const still = chances.seized * seized + chances.over * over
      const from = o * fast.length
      for (let h = 0; h < fast.length; h++)
        this.logs[from + h]! += log + Math.log(chances.sound * fast[h]! + chances.slow * slow[h]! + still)
    }
  }

  /** The log of their sum: while some strips are missing, the most that it can come to. */
  total(): number {
    return logSum(this.logs)
  }
}

/** The weights of hidden states with each oil, with every strip. */
export const weighingOf = (
  byHand: ByHand,
  retainer: number,
  hidden: readonly Hidden[],
  sums: readonly StripSums[],
): Weighing => {
  const weighing = new Weighing(byHand, retainer, hidden)
  for (let strip = 0; strip < strips; strip++) weighing.add(strip, sums[strip]!)
  return weighing
}
