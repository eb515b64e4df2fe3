import { columnsOfStrip } from '../mechanism/bed.ts'
import { allStrips } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { pivotChances, retainerChances } from './chances.ts'
import { explanations } from './explanations.ts'
import { oils, type PlaceFinding, type Together } from './finding.ts'
import { columnPlace, type Place, stripPlace, type WidePlace, widePlaces } from './place.ts'
import type { PossibleBed } from './close-search.ts'
import type { Posterior } from './posterior.ts'
import type { SumSetting } from './sum-setting.ts'

const togetherLimits = { place: 0.03, nearSure: 0.95, set: 0.5 } as const

/** What is wrong in a set of places, from what is wrong in each state of the whole bed. */
const wrongIn = ({ wide }: Posterior, members: readonly Place[]): number =>
  wide.reduce(
    (sum, { places, weight }) => (places.some((place) => members.includes(place)) ? sum + weight : sum),
    0,
  )

/** Whether the notes make a place likelier than it was: what they do not speak of explains nothing. */
const isSpokenFor = (posterior: Posterior, place: WidePlace, wrong: number): boolean =>
  wrong > 1.5 * chanceBefore(posterior, place)

/** Chance of the bar and of the pivots before the notes, under the oil that they speak for; 0 for other places. */
const chanceBefore = ({ oil }: Posterior, place: WidePlace): number => {
  if (place === 'pivots')
    return pivotChances.reduce((sum, { mm, chance }) => (mm > 0 ? sum + chance : sum), 0)
  return place === 'retainer' ? oils.reduce((sum, name) => sum + oil[name] * retainerChances[name], 0) : 0
}

/**
 * Sets of places of which one is wrong, and nothing says which: a strip with its columns; what reaches the whole bed; and
 * where all strips seized would explain the notes as well, that again with all strips.
 */
export const togetherOf = (
  posterior: Posterior,
  places: readonly PlaceFinding[],
  setting: SumSetting,
  beds: readonly PossibleBed[],
): Together[] => {
  const wrongAt = new Map(places.map(({ place, wrong }) => [place, wrong] as const))
  const of = (place: Place): number => wrongAt.get(place) ?? 0
  const sets: Together[] = []
  const add = (members: readonly Place[], wrong: number): void => {
    if (members.length < 2 || wrong <= togetherLimits.set) return
    if (members.some((place) => of(place) > togetherLimits.nearSure)) return
    sets.push({ places: [...members].sort((one, other) => of(other) - of(one)), wrong })
  }
  const isLikely = (place: Place): boolean => of(place) > togetherLimits.place
  for (const strip of allStrips)
    add(
      [stripPlace(strip), ...columnsOfStrip(strip).map(columnPlace)].filter(isLikely),
      1 - at(posterior.rightStrips, strip - 1),
    )
  const wide = widePlaces.filter((place) => isLikely(place) && isSpokenFor(posterior, place, of(place)))
  add(wide, wrongIn(posterior, wide))
  const all = explanations(setting, beds)
  add(all, wrongIn(posterior, all))
  return sets
}
