import type { Finding } from './finding.ts'
import { type MendableBy, mendableOf, placesFor, type Work, worth } from './mending.ts'
import { openedBy, type RepairId, repairIds, repairOf } from './repairs.ts'

const worksFrom = (mendable: MendableBy, ids: readonly RepairId[], least: number): Work[] =>
  ids.flatMap((repair): Work[] => {
    const places = placesFor(mendable, repair, least)
    return places.length > 0 ? [{ repair, places }] : []
  })

const keyOf = (works: readonly Work[]): string =>
  works.map(({ repair, places }) => `${repair}: ${[...places].sort().join(' ')}`).join('; ')

/** Each way to work by itself, then several at once: all from outside, all that is likely wrong, all in doubt, and all. */
export const waysToGo = (finding: Finding): Work[][] => {
  const mendable = mendableOf(finding)
  const single = repairIds.flatMap((id) => {
    const likely = worksFrom(mendable, [id], worth.likely)
    const doubtful = worksFrom(mendable, [id], worth.doubtful)
    return doubtful.length > 0 ? [likely, doubtful] : [worksFrom(mendable, [id], worth.least)]
  })
  const outside = repairIds.filter((id) => openedBy(repairOf(id).opens) === 'nothing')
  const several = [
    worksFrom(mendable, outside, worth.likely),
    worksFrom(mendable, outside, worth.doubtful),
    worksFrom(mendable, repairIds, worth.likely),
    worksFrom(mendable, repairIds, worth.doubtful),
    worksFrom(mendable, repairIds, worth.least),
  ]
  const distinct = new Map([...single, ...several].map((works) => [keyOf(works), works]))
  return [...distinct.values()].filter(({ length }) => length > 0)
}
