import { at } from '../mechanism/lookup.ts'
import { possibleNeedles, possibleSlot } from './bed-needles.ts'
import { wearChances } from './chances.ts'
import type { Finding, Unexplained } from './finding.ts'
import { looksOf } from './looks.ts'
import { placesOf } from './places.ts'
import { possibleBeds } from './possible-beds.ts'
import { type Posterior, posteriorOf } from './posterior.ts'
import type { Query } from './query.ts'
import { sumSettingOf } from './sum-setting.ts'
import { togetherOf } from './together.ts'
import { type BedMachines, rankMachines } from './whole-machines.ts'

/** A note counts as unexplained from this chance on. */
const leastSlip = 0.5

const wearOf = (chances: Float64Array): Finding['wear'] => {
  const quantile = (share: number): number => {
    let sum = 0
    for (const [n, chance] of chances.entries()) if ((sum += chance) >= share) return at(wearChances, n).wear
    return 1
  }
  const mean = chances.reduce((sum, chance, n) => sum + chance * at(wearChances, n).wear, 0)
  return { mean, low: quantile(0.05), high: quantile(0.95) }
}

const unexplainedOf = ({ slips }: Posterior, looks: number): Unexplained[] =>
  possibleNeedles.flatMap((needle) =>
    Array.from({ length: looks }, (_, pass) => ({
      pass,
      needle,
      chance: at(slips, possibleSlot(needle) * looks + pass),
    })).filter(({ chance }) => chance > leastSlip),
  )

/** What may be wrong with a machine, and the sums that machines are drawn from. */
export interface Inference {
  readonly finding: Finding
  readonly beds: readonly BedMachines[]
}

/** The same, with the sums that machines are drawn from: the next looks need them. */
export const inferWhole = (query: Query): Inference => {
  const looks = looksOf(query)
  const setting = sumSettingOf(query, looks)
  const beds = possibleBeds(setting, looks)
  const { posterior, machines } = posteriorOf(beds, looks)
  const places = placesOf(posterior, setting.byHand)
  const finding: Finding = {
    places,
    oil: posterior.oil,
    wear: wearOf(posterior.wear),
    together: togetherOf(posterior, places, setting, beds),
    unexplained: unexplainedOf(posterior, looks.length),
    ranked: rankMachines(machines),
    isExact: !places.some(({ place }) => place === 'pivots'),
  }
  return { finding, beds: machines }
}

/**
 * What may be wrong with a machine, from the needles noted in its passes and from the checks made by hand: places with
 * their chances, oil and wear, summed over every combination of faults. This is the one way in: the page, its worker and
 * the command all call it, and so have the same answers. A query with no pass has the chances before anything is seen.
 *
 * Throws a `RangeError` where a pass has a row that its card hasn't, and where there are more than `mostLooks` passes.
 *
 * @example
 * // Every eighth needle, from L94 on, was missed in a row of all holes.
 * const needles = Array.from({ length: 200 }, (_, n) => (n % 8 === 6 ? 'p' : 's')).join('')
 * const pass: NotedPass = { card: [0xffffff], row: 1, way: 1, speed: 500, needles }
 * const { places } = infer({ card: pass.card, passes: [pass], slip: slips.sure, checks: [], columnOne })
 * places[0].place // → 'strip.3'
 */
export const infer = (query: Query): Finding => inferWhole(query).finding
