import { at } from '../mechanism/lookup.ts'
import {
  type Mendable,
  type MendableBy,
  mendableOf,
  minutesOf,
  partsOf,
  type PartCount,
  placesFor,
  type Work,
  workMinutes,
  worth,
} from './mending.ts'
import type { Finding } from './finding.ts'
import type { Place } from './place.ts'
import {
  type Opening,
  type RepairCaution,
  type RepairId,
  repairIds,
  repairOf,
  type ToolId,
  toolIds,
} from './repairs.ts'

/** A place that may be worked on while the machine is open for something else. */
interface Also extends Mendable {
  readonly repair: RepairId
}

/** One step of the order of work. */
export interface PlanStep extends Work {
  /** What comes off the machine now, and stays off as long as the steps after it need it off. */
  readonly opens: readonly Opening[]
  /** The hazards that begin with this step. */
  readonly cautions: readonly RepairCaution[]
  /** The work itself, in minutes, without what has to be opened. */
  readonly minutes: number
  /** While the machine is open so far: places that are more likely right than wrong, but may be wrong. */
  readonly also: readonly Also[]
}

/** The order of work, with what to lay out before it. */
export interface Plan {
  readonly steps: readonly PlanStep[]
  /** All of it, in minutes, with what has to be opened. */
  readonly minutes: number
  readonly parts: readonly PartCount[]
  readonly tools: readonly ToolId[]
}

/** The places that a way to work is for: those likely wrong, or where none is, those that may be. */
const placesOf = (mendable: MendableBy, repair: RepairId): Place[] => {
  const likely = placesFor(mendable, repair, worth.likely)
  return likely.length > 0 ? likely : placesFor(mendable, repair, worth.doubtful)
}

/** What else can be reached while something is off; nothing where nothing is off. */
const reachedAt = (mendable: MendableBy, off: readonly Opening[]): Also[] =>
  repairIds
    .filter((repair) => {
      const { opens } = repairOf(repair)
      return opens.length > 0 && opens.every((opening) => off.includes(opening))
    })
    .flatMap((repair) => mendable[repair].map((one): Also => ({ repair, ...one })))
    .filter(({ chance }) => chance >= worth.doubtful && chance < worth.likely)
    .sort((one, other) => other.chance - one.chance)

/**
 * The order of work for the ways ticked: from outside inwards, what needs the same things off one after the other, the
 * card reader last. No order has fewer openings.
 */
export const planOf = (ticked: readonly RepairId[], finding: Finding): Plan => {
  const order = repairIds.filter((id) => ticked.includes(id))
  const mendable = mendableOf(finding)
  const works = order.map((repair): Work => ({ repair, places: placesOf(mendable, repair) }))
  const warned = new Set<RepairCaution>()
  const named = new Set(works.flatMap((work) => work.places.map((place) => `${work.repair} ${place}`)))
  const steps = works.map((work, n): PlanStep => {
    const { opens, cautions } = repairOf(work.repair)
    const before: readonly Opening[] = n === 0 ? [] : repairOf(at(order, n - 1)).opens
    const begins = cautions.filter((caution) => !warned.has(caution))
    for (const caution of begins) warned.add(caution)
    const also = reachedAt(mendable, opens).filter(({ repair, place }) => !named.has(`${repair} ${place}`))
    for (const { repair, place } of also) named.add(`${repair} ${place}`)
    return {
      ...work,
      opens: opens.filter((opening) => !before.includes(opening)),
      cautions: begins,
      minutes: workMinutes(work),
      also,
    }
  })
  return {
    steps,
    minutes: minutesOf(works),
    parts: partsOf(works),
    tools: toolIds.filter((tool) => order.some((id) => repairOf(id).tools.includes(tool))),
  }
}
