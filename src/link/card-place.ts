import { canonicalPlace, type CardPlace, needleIndex, needleName } from '../mechanism/bed.ts'

/**
 * Reads the needle of column 1, such as R1 or L12; null where the text names no needle. Any needle of column 1 will do:
 * the place has the one among R1 to R24.
 */
export const readCardPlace = (text: string): CardPlace | null => {
  const columnOne = needleIndex(text)
  return columnOne === null ? null : canonicalPlace({ columnOne })
}

/** Writes a place of the card by its needle of column 1 among R1 to R24. */
export const writeCardPlace = (place: CardPlace): string => needleName(canonicalPlace(place).columnOne)
