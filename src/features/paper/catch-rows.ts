import { type CardPlace, needleName, needlesOfStrip } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allStrips } from '../../mechanism/indices.ts'

/**
 * The names of the needles that have a catch, on a bed of so many needles with the card at this place: a row for each of
 * a strip's catches from the left, one of each strip in it; null where a strip has none left.
 */
export const catchRows = (place: CardPlace, needles: number = dimensions.needles): (string | null)[][] => {
  const lists = allStrips.map((strip) => needlesOfStrip(strip, place, needles))
  return Array.from({ length: Math.ceil(needles / dimensions.strips) }, (_, row) =>
    lists.map((own) => {
      const needle = own[row]
      return needle === undefined ? null : needleName(needle)
    }),
  )
}
