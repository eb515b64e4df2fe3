import type { Way } from './bed.ts'
import { type Condition, presserOf } from './condition.ts'
import type { Dimensions } from './dimensions.ts'
import { allColumns } from './indices.ts'
import { lastHold } from './margins.ts'
import { normalCdf, owenT } from './normal.ts'
import { holeClearance, misplacement } from './pin.ts'
import type { Run } from './pass.ts'
import { releaseOf } from './release.ts'
import { beltLead, fullPush, leadOf, sweepWindow } from './sweep.ts'
import { travelIn } from './travel.ts'
import { scatter, wornDimensions } from './wear.ts'

/** Steps of Simpson's rule over the pins' scatter, and how many deviations it reaches to each side. */
const steps = 400
const reachOfScatter = 7

/** Chance that a part whose margin is so many mm, with errors of this deviation in mm, still works. */
const chanceOfMargin = (mm: number, deviation: number): number =>
  deviation === 0 ? Number(mm >= 0) : normalCdf(mm / deviation)

/**
 * The same for a part that rattles as well: it loses max(0, rattle) more, a normal draw with the deviation `rattle` in
 * mm. With X and Y the two draws, P(X + max(0, Y) <= m) is half P(X <= m) and half P(X + Y <= m), less Owen's T of
 * m over the deviation of X + Y and of the ratio of the two deviations.
 */
export const chanceOfRattling = (mm: number, deviation: number, rattle: number): number => {
  if (rattle === 0) return chanceOfMargin(mm, deviation)
  if (deviation === 0) return mm < 0 ? 0 : normalCdf(mm / rattle)
  const both = Math.hypot(deviation, rattle)
  return (normalCdf(mm / deviation) + normalCdf(mm / both)) / 2 - owenT(mm / both, rattle / deviation)
}

/** The most lost motion in mm with which a push of so many mm holds its strip up to `until`, in needles of travel. */
const mostLostToHold = (dimensions: Dimensions, push: number, constant: number, until: number): number => {
  let holds = 0
  let fails = dimensions.ratio * push
  if (releaseOf(dimensions, push, holds, constant).holdsTo < until) return -Infinity
  for (let n = 0; n < 40; n++) {
    const middle = (holds + fails) / 2
    if (releaseOf(dimensions, push, middle, constant).holdsTo < until) fails = middle
    else holds = middle
  }
  return holds
}

/** The most lost motion in mm with which a push moves a strip to its reach and holds it for as long as it must. */
const mostLost = (condition: Condition, early: number): ((push: number) => number) => {
  const { dimensions } = condition
  const until = lastHold(condition, early)
  const share = sweepWindow(dimensions, early - leadOf(dimensions))
  const constant = travelIn(dimensions, Math.min(...condition.stripReturn), condition.speed)
  const known = new Map<number, number>()
  return (push) => {
    const found = known.get(push)
    if (found !== undefined) return found
    const toReach = dimensions.ratio * push * share - condition.reach
    // Up to the end of the wedge's flat the push does not fall: what reaches, holds.
    const most =
      until <= dimensions.sweepFlat
        ? toReach
        : Math.min(toReach, mostLostToHold(dimensions, push, constant, until))
    known.set(push, most)
    return most
  }
}

/** Chance that a pin of scattered height and a rocker of scattered lost motion shift a strip far and long enough. */
const chanceOfPush = (condition: Condition, wear: number, early: number): number => {
  const deviation = scatter(wear)
  const { dimensions } = condition
  const { lost } = wornDimensions(dimensions, wear)
  const most = mostLost(condition, early)
  const chance = (z: number): number => {
    const push = fullPush(condition, dimensions.pinHigh + z * deviation.pin)
    return chanceOfRattling(most(push) - lost, deviation.lost, condition.pivotsLoose)
  }
  if (deviation.pin === 0) return chance(0)
  const width = (2 * reachOfScatter) / steps
  let sum = 0
  for (let n = 0; n <= steps; n++) {
    const z = -reachOfScatter + n * width
    const weight = n === 0 || n === steps ? 1 : n % 2 === 1 ? 4 : 2
    sum += weight * chance(z) * Math.exp((-z * z) / 2)
  }
  return Math.min(1, (sum * width) / 3 / Math.sqrt(2 * Math.PI))
}

/** Share of the columns whose holes let their pins through. */
const chanceOfFit = (condition: Condition): number => {
  const clearance = holeClearance(condition.dimensions)
  const fits = allColumns.filter((column) => misplacement(condition, column) <= clearance)
  return fits.length / allColumns.length
}

/**
 * Chance, 0 to 1, that a needle under a hole is taken, held and passes under the first gate this time, over all
 * machines of this wear. Exact but for the integral over the pins' scatter (Simpson's rule).
 */
export const chanceOfSelection = (run: Run, way: Way): number => {
  const { condition, scenario } = run
  if (condition.carriagePlain) return 0
  const { dimensions } = condition
  const deviation = scatter(scenario.wear)
  const both = Math.hypot(deviation.catch, deviation.butt)
  const deepest = Math.min(presserOf(condition, way), dimensions.gate2) - dimensions.catchDepth
  const shallowest = condition.gate1 - dimensions.catchDepth
  const chanceOfHold = Math.max(0, chanceOfMargin(deepest, both) - 1 + chanceOfMargin(-shallowest, both))
  const early = beltLead(condition, way)
  return chanceOfFit(condition) * chanceOfPush(condition, scenario.wear, early) * chanceOfHold
}
