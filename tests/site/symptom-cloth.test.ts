import { describe, expect, test } from 'vitest'
import { symptoms } from '@/find/likeness.ts'
import { symptomCloth } from '@/site/symptoms.ts'

/** Places from the left at which some stitch of a piece of cloth is wrong. */
const wrongPlaces = (sight: (typeof symptoms)[number]): number[] => {
  const { rows } = symptomCloth(sight)
  const [row = []] = rows
  return row.map((_, place) => place).filter((place) => rows.some((one) => one[place]!.isWrong))
}

const stitches = (sight: (typeof symptoms)[number]): string[] => [
  ...new Set(
    symptomCloth(sight)
      .rows.flat()
      .map(({ stitch }) => stitch),
  ),
]

describe('the cloth of a sight', () => {
  test.each(symptoms)('shows something wrong on two repeats of the card, and says so: %s', (sight) => {
    const { rows, words } = symptomCloth(sight)
    expect(rows.length).toBeGreaterThan(0)
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([48]))
    expect(wrongPlaces(sight).length).toBeGreaterThan(0)
    expect(words).toMatch(/ stitches (is|are) wrong, /)
  })

  test('is of one colour where nothing or everything is selected', () => {
    expect(stitches('nothing')).toEqual(['first'])
    expect(stitches('everything')).toEqual(['second'])
    expect(stitches('rows').sort()).toEqual(['first', 'second'])
  })

  test('has lines at every eighth or twenty-fourth stitch, or one', () => {
    const steps = (sight: 'eighth' | 'twentyFourth'): Set<number> => {
      const places = wrongPlaces(sight)
      return new Set(places.slice(1).map((place, n) => place - places[n]!))
    }
    expect(steps('eighth')).toEqual(new Set([8]))
    expect(steps('twentyFourth')).toEqual(new Set([24]))
    expect(wrongPlaces('one')).toHaveLength(1)
  })

  test('is wrong in one row only where the card is', () => {
    const { rows } = symptomCloth('oneRow')
    expect(rows.filter((row) => row.some(({ isWrong }) => isWrong))).toHaveLength(1)
  })
})
