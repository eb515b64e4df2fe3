import { bedLengths, type Needle, needlesOfBed, slotOf } from '../mechanism/indices.ts'
import type { Letters } from './bed-letters.ts'
import { dimensionsAt, type MachinePlace } from './view.ts'

/** Every needle that any bed may have, from the left. */
export const possibleNeedles = needlesOfBed(bedLengths.most)

/** Where a needle's entry is in a list with one for each of `possibleNeedles`. */
export const possibleSlot = (needle: number): number => slotOf(needle, bedLengths.most)

/** Every needle of a machine's bed, from the left. */
export const needlesAt = (place: Pick<MachinePlace, 'own'>): readonly Needle[] =>
  needlesOfBed(dimensionsAt(place).needles)

/** The letter of a needle in a bed as it was noted; empty where the bed has no such needle. */
export const letterOf = (letters: Letters, needle: Needle): string =>
  letters.charAt(slotOf(needle, letters.length))
