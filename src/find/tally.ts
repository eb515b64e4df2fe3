import type { Cause, Place } from './place.ts'

/** Chances of the causes of each place, added up over all that is possible. */
export class Tally {
  private readonly places = new Map<Place, Map<string, { causes: readonly Cause[]; weight: number }>>()

  /** Adds a chance that a place is wrong by one of these causes. */
  add(place: Place, causes: readonly Cause[], weight: number): void {
    if (weight <= 0) return
    let ways = this.places.get(place)
    if (!ways)
      this.places.set(place, (ways = new Map<string, { causes: readonly Cause[]; weight: number }>()))
    const key = causes.join()
    const way = ways.get(key)
    if (way) way.weight += weight
    else ways.set(key, { causes, weight })
  }

  /** Every place with the ways in which it may be wrong, and what was added for each. */
  entries(): { place: Place; ways: { causes: readonly Cause[]; weight: number }[] }[] {
    return [...this.places].map(([place, ways]) => ({ place, ways: [...ways.values()] }))
  }
}
