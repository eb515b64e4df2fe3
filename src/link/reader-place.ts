import { type CardPlace, canonicalPlace, modulo, usualPlace, withinPass } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { type Fault, indexKindsOf, makeFault } from '../mechanism/fault.ts'
import { isNeedle } from '../mechanism/indices.ts'
import { dimensionsOf } from '../mechanism/own.ts'
import { read } from './read.ts'
import type { CardLibrary, State } from './state.ts'

/** How many needles to the right what our text says of R1 is seen on a bed with column 1 at `place`: −11 to 12. */
export const shiftTo = (place: CardPlace): number => {
  const half = dimensions.columns / 2
  return (
    modulo(canonicalPlace(place).columnOne - usualPlace.columnOne + half - 1, dimensions.columns) - half + 1
  )
}

/** A needle of the same column on a moved bed; where that would be past the bed's end, the next one on the bed. */
const movedNeedle = (needle: number, shift: number, needles: number): number => {
  const moved = needle + shift
  if (isNeedle(moved, needles)) return moved
  return moved - Math.sign(shift) * dimensions.columns
}

const movedFault = (fault: Fault, shift: number, needles: number): Fault => {
  const kinds = indexKindsOf(fault.kind)
  if (!kinds.includes('needle')) return fault
  const indices = fault.at.map((index, n) =>
    kinds[n] === 'needle' ? movedNeedle(index, shift, needles) : index,
  )
  return makeFault(fault.kind, indices, fault.amount)
}

/** A carriage position moved with the bed; a place past the needles in use, where passes begin and end, stays. */
export const movedPosition = (at: number, pass: number, { bed }: State, place: CardPlace): number =>
  at < bed.first || at > bed.last ? at : withinPass(at + shiftTo(place), pass, bed)

/**
 * A state of our texts, in which column 1 is at R1, on a bed with column 1 at `place`: moved along the bed as far as the
 * card is, so that its columns, strips and what comes of them are those that the text speaks of.
 */
export const movedTo = (state: State, place: CardPlace): State => {
  const shift = shiftTo(place)
  if (shift === 0) return state
  return {
    ...state,
    ...canonicalPlace(place),
    at: movedPosition(state.at, state.pass, state, place),
    faults: state.faults.map((fault) => movedFault(fault, shift, dimensionsOf(state.own).needles)),
  }
}

/** Reads a state of our texts for a bed with column 1 at `place`; one that names its own needle of column 1 keeps it. */
export const readForPlace = (text: string, library: CardLibrary, place: CardPlace): State => {
  const { state } = read(text, library)
  return new URLSearchParams(text).has('first') ? state : movedTo(state, place)
}
