import { at } from '../mechanism/lookup.ts'
import type { Finding, PlaceFinding } from './finding.ts'
import { type Cause, faultOfCause, type Place } from './place.ts'
import { sharesOfCauses } from './how-common.ts'
import {
  openingMinutes,
  openingsOf,
  type PartId,
  type RepairId,
  repairIds,
  repairOf,
  repairOfKind,
} from './repairs.ts'

/** Places less likely wrong than the first are left alone; from the second on they are in doubt, from the third likely wrong. */
export const worth = { least: 0.01, doubtful: 0.1, likely: 0.5 } as const

/** A way to work, and the places that are worked on. */
export interface Work {
  readonly repair: RepairId
  readonly places: readonly Place[]
}

/** How many of a part some work takes; perhaps none where it is not sure. */
export interface PartCount {
  readonly part: PartId
  readonly count: number
  readonly isSure: boolean
}

/** The way to work that mends a cause at a place; null where nobody knows what it is, and the place reaches the whole bed. */
export const repairOfCause = (place: Place, cause: Cause): RepairId | null => {
  if (cause === 'card.out') return repairOfKind(cause)
  const fault = faultOfCause(cause)
  if (fault) return repairOfKind(fault.kind)
  if (place.startsWith('needle.')) return 'needles'
  return place.startsWith('column.') ? 'reader' : null
}

/** A place that some work may mend. */
export interface Mendable {
  readonly place: Place
  /** Chance that it is wrong in a way that this work mends. */
  readonly chance: number
}

/** What each way to work may mend, the likeliest place first; none is left out that a finding has. */
export type MendableBy = Readonly<Record<RepairId, readonly Mendable[]>>

const chancesOf = ({ place, ways }: PlaceFinding): Map<RepairId, number> => {
  const chances = new Map<RepairId, number>()
  for (const { causes, probability } of ways) {
    const shares = sharesOfCauses(causes)
    for (const [n, cause] of causes.entries()) {
      const repair = repairOfCause(place, cause)
      if (repair) chances.set(repair, (chances.get(repair) ?? 0) + probability * at(shares, n))
    }
  }
  return chances
}

/** What each way to work may mend of a finding. */
export const mendableOf = ({ places }: Finding): MendableBy => {
  const by = places.map((finding) => ({ place: finding.place, chances: chancesOf(finding) }))
  const of = (repair: RepairId): Mendable[] =>
    by
      .flatMap(({ place, chances }) => {
        const chance = chances.get(repair)
        return chance === undefined ? [] : [{ place, chance }]
      })
      .sort((one, other) => other.chance - one.chance)
  return Object.fromEntries(repairIds.map((repair) => [repair, of(repair)])) as Record<RepairId, Mendable[]>
}

/** The places that some work would mend with at least this chance, the likeliest first. */
export const placesFor = (mendable: MendableBy, repair: RepairId, least: number): Place[] =>
  mendable[repair].filter(({ chance }) => chance >= least).map(({ place }) => place)

/** How long some work takes by itself, in minutes, without what has to be opened. */
export const workMinutes = ({ repair, places }: Work): number => {
  const { first, further } = repairOf(repair).minutes
  return first + further * Math.max(0, places.length - 1)
}

/** How long works take together, in minutes: what several need open is opened once. */
export const minutesOf = (works: readonly Work[]): number =>
  works.reduce((sum, work) => sum + workMinutes(work), 0) +
  openingsOf(works.map(({ repair }) => repair)).reduce((sum, opening) => sum + openingMinutes[opening], 0)

/** The parts that works take, in the order of the works. */
export const partsOf = (works: readonly Work[]): PartCount[] =>
  works.flatMap(({ repair, places }) =>
    repairOf(repair).parts.map(({ part, per, isSure }) => ({
      part,
      isSure,
      count: per === 'place' ? Math.max(1, places.length) : 1,
    })),
  )
