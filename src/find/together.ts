import { allStrips } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import type { PlaceFinding, Together } from './finding.ts'
import { stripColumns } from './frame.ts'
import { columnPlace, type Place, stripPlace, widePlaces } from './place.ts'
import type { Posterior } from './posterior.ts'

const togetherLimits = { place: 0.03, nearSure: 0.95, set: 0.5 } as const

/** Sets of places of which one is wrong, and nothing says which. */
export const togetherOf = (posterior: Posterior, places: readonly PlaceFinding[]): Together[] => {
  const likely = new Map(
    places
      .filter(({ wrong }) => wrong > togetherLimits.place)
      .map(({ place, wrong }) => [place, wrong] as const),
  )
  const sets: Together[] = []
  const add = (members: readonly Place[], wrong: number): void => {
    const own = members.filter((place) => likely.has(place))
    if (own.length < 2 || wrong <= togetherLimits.set) return
    if (own.some((place) => likely.get(place)! > togetherLimits.nearSure)) return
    sets.push({ places: own.sort((one, other) => likely.get(other)! - likely.get(one)!), wrong })
  }
  for (const strip of allStrips)
    add(
      [stripPlace(strip), ...stripColumns(strip - 1).map((column) => columnPlace((column + 1) as never))],
      1 - at(posterior.rightStrips, strip - 1),
    )
  const wide = widePlaces.filter((place) => likely.has(place))
  add(
    wide,
    posterior.wide.reduce(
      (sum, { places: own, weight }) =>
        own.some((place) => wide.includes(place as never)) ? sum + weight : sum,
      0,
    ),
  )
  return sets
}
