import { modulo } from '../mechanism/bed.ts'
import { type Dimensions, dimensions as training } from '../mechanism/dimensions.ts'
import { springing } from '../mechanism/gate.ts'
import { at } from '../mechanism/lookup.ts'
import { timeOver } from '../mechanism/travel.ts'
import { otherNeedle, stiffMs, wrongNotes } from './chances.ts'
import type { NeedleChances } from './components.ts'
import { entropy } from './shared-bits.ts'

const { columns } = training

/** How likely a needle is seen selected, plain and unmoved, whatever it is. */
const seen = (
  { right, noHold, stiff, gone, other }: NeedleChances,
  slip: number,
  isHeld: boolean,
  isLate: boolean,
) => {
  const selected = [1 - slip, slip * wrongNotes.other, slip * wrongNotes.unmoved]
  const plain = [slip * wrongNotes.other, 1 - slip, slip * wrongNotes.unmoved]
  const unmoved = [slip * wrongNotes.goneSelected, slip * wrongNotes.gonePlain, 1 - slip]
  const any = [otherNeedle.selected, otherNeedle.plain, otherNeedle.unmoved]
  return [
    { chance: right, notes: isHeld ? selected : plain },
    { chance: noHold, notes: plain },
    { chance: stiff, notes: isHeld || isLate ? selected : plain },
    { chance: gone, notes: unmoved },
    { chance: other, notes: any },
  ]
}

const needleBits = (needle: NeedleChances, slip: number, isHeld: boolean, isLate: boolean): number => {
  const states = seen(needle, slip, isHeld, isLate)
  const notes = [0, 1, 2].map((n) =>
    states.reduce((sum, state) => sum + state.chance * at(state.notes, n), 0),
  )
  return entropy(notes) - states.reduce((sum, state) => sum + state.chance * entropy(state.notes), 0)
}

/** What a pass offers the needles of machines in one state of the whole bed. */
export interface Offers {
  /** By place: the share of those machines in which its needles are offered a hold. */
  readonly heldAt: readonly number[]
  /** Whether needles are sorted by that at all. */
  readonly sorts: boolean
}

/** What notes of single needles settle in a pass, where those beside them show whether the strip was offered. */
export const bitsOfNeedles = (
  needles: readonly NeedleChances[],
  { columnOne, slip }: { readonly columnOne: number; readonly slip: number },
  speed: number,
  dimensions: Dimensions,
  { heldAt, sorts }: Offers,
  known: Map<string, number>,
): number => {
  if (!sorts) return 0
  const { gate1, gateLag, presserRight } = dimensions
  const isLate = -springing(presserRight, timeOver(dimensions, gateLag, speed), stiffMs) >= gate1
  const bits = (needle: NeedleChances, isHeld: boolean): number => {
    const key = `${needle.needle} ${isHeld} ${isLate}`
    let found = known.get(key)
    if (found === undefined) known.set(key, (found = needleBits(needle, slip, isHeld, isLate)))
    return found
  }
  return needles.reduce((sum, needle) => {
    const held = at(heldAt, modulo(needle.needle - columnOne, columns))
    return sum + held * bits(needle, true) + (1 - held) * bits(needle, false)
  }, 0)
}
