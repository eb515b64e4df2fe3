import type { Finding, PlaceFinding } from '@/find/finding.ts'

/** A finding of which only the places, and what is given besides, matter. */
export const findingOf = (
  places: readonly Pick<PlaceFinding, 'place' | 'ways'>[],
  more: Partial<Finding> = {},
): Finding => ({
  places: places.map(({ place, ways }) => ({
    place,
    ways,
    wrong: ways.reduce((sum, { probability }) => sum + probability, 0),
    before: null,
  })),
  oil: { fresh: 1, old: 0, set: 0 },
  wear: { mean: 0, low: 0, high: 0 },
  together: [],
  unexplained: [],
  ranked: [],
  isExact: true,
  ...more,
})
