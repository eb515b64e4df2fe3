import { type Bed, needleIndex, needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { roundNumber } from '../mechanism/number.ts'

const middle = dimensions.needles / 2

/**
 * Reads a carriage position: `R12`, `R12.5`, `L112`. Right of L1 and left of R1 there is R0.5 (or L0.5).
 * Gives the model's x in needles, or null where the text is no place.
 */
export const readCarriagePosition = (text: string): number | null => {
  const match = /^([LR])(\d{1,40}(?:\.\d{1,40})?)$/.exec(text)
  if (!match) return null
  const distance = roundNumber(Number(match[2]))
  if (distance === 0) return null
  return match[1] === 'L' ? roundNumber(middle - distance) : roundNumber(middle - 1 + distance)
}

/** Writes a carriage position so that `readCarriagePosition` gives it back, to the four decimals that links keep. */
export const writeCarriagePosition = (x: number): string => {
  const place = roundNumber(x)
  return place <= middle - 1 ? `L${roundNumber(middle - place)}` : `R${roundNumber(place - middle + 1)}`
}

/** Reads `L24-R24` on a bed of so many needles; null where it lacks one, or they stand the wrong way round. */
export const readBed = (text: string, needles: number = dimensions.needles): Bed | null => {
  const [left, right, ...rest] = text.split('-')
  const first = needleIndex(left!, needles)
  const last = needleIndex(right ?? '', needles)
  return rest.length === 0 && first !== null && last !== null && first <= last ? { first, last } : null
}

/** Writes the needles in use so that `readBed` gives them back. */
export const writeBed = (bed: Bed): string => `${needleName(bed.first)}-${needleName(bed.last)}`
