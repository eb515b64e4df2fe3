import { type CardPlace, needleName, stripOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { allNeedles, allStrips } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'

/**
 * The names of the needles that have a catch, on a bed with the card at this place: a row for each of a strip's catches
 * from the left, one of each strip in it.
 */
export const catchRows = (place: CardPlace): string[][] => {
  const lists = allStrips.map((strip) =>
    allNeedles.filter((needle) => stripOfNeedle(needle, place) === strip),
  )
  return Array.from({ length: dimensions.needles / dimensions.strips }, (_, row) =>
    lists.map((needles) => needleName(at(needles, row))),
  )
}
