import { dimensions } from '../mechanism/dimensions.ts'
import { bedLengths } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import { pivotChances, readers, retainerMs, wearChances } from './chances.ts'
import type { Oil } from './finding.ts'
import { logSum } from './log-sum.ts'
import type { Look } from './looks.ts'
import { addNeedleWays } from './needle-shares.ts'
import { oilStates } from './oil-states.ts'
import type { Place } from './place.ts'
import type { PossibleBed } from './close-search.ts'
import { hidesPushes } from './possible-beds.ts'
import { addBed } from './strip-shares.ts'
import { Tally } from './tally.ts'
import type { BedMachines } from './whole-machines.ts'

/** Beds with less than this share of the whole, together with the rest of their kind, change nothing that is said. */
const leastBed = 5e-4
/** Hidden states with less than this share of the whole are left out of what is said. */
const slight = 1e-6

/** Everything that the possible beds say together; chances add up over all of them. */
export interface Posterior {
  readonly tally: Tally
  readonly oil: Record<Oil, number>
  readonly wear: Float64Array
  readonly reader: Float64Array
  /** By strip from 0: the chance that it and its three columns are right. */
  readonly rightStrips: Float64Array
  /** Sets of whole-bed places that are wrong at once, with their chances. */
  readonly wide: { readonly places: readonly Place[]; readonly weight: number }[]
  /** By needle of `possibleNeedles` and look: the chance that the note is a slip, or of a needle that nothing explains. */
  readonly slips: Float64Array
}

const nothing = (looks: number): Posterior => ({
  tally: new Tally(),
  oil: { fresh: 0, old: 0, set: 0 },
  wear: new Float64Array(wearChances.length),
  reader: new Float64Array(readers.length),
  rightStrips: new Float64Array(dimensions.strips),
  wide: [],
  slips: new Float64Array(bedLengths.most * looks),
})

const addTo = (whole: Float64Array, part: Float64Array): void => {
  for (const [n, value] of part.entries()) whole[n]! += value
}

/** Adds what reaches the whole bed. */
const addWide = ({ tally, wide }: Posterior, { state, bars }: PossibleBed, weight: number): void => {
  for (const { place, causes } of state.causes) tally.add(place, causes, weight)
  for (const { retainer, share } of bars) {
    const places: Place[] = state.causes.map(({ place }) => place)
    if (retainer >= 0) {
      places.push('retainer')
      tally.add('retainer', [`retainer.worn=${at(retainerMs, retainer)}`], weight * share)
    }
    wide.push({ places, weight: weight * share })
  }
}

/** The weights of a bed's hidden states, which add up to its share; slight ones are nothing. */
const weightsOf = ({ logs }: PossibleBed, share: number): Float64Array => {
  const whole = logSum(logs)
  const weights = logs.map((log) => {
    const own = Math.exp(log - whole)
    return share * own > slight ? own : 0
  })
  const kept = weights.reduce((sum, weight) => sum + weight, 0)
  return weights.map((weight) => (weight / kept) * share)
}

/** Adds what a bed's hidden states say of oil, wear, reader and pivots; gives the chance of loose pivots. */
const addHidden = (posterior: Posterior, { sums }: PossibleBed, weights: Float64Array): number => {
  const { hidden } = sums
  let loose = 0
  for (const [n, weight] of weights.entries()) {
    const { wear, reader, pivots } = at(hidden, n % hidden.length)
    posterior.oil[at(oilStates, Math.floor(n / hidden.length)).oil] += weight
    posterior.wear[wear]! += weight
    posterior.reader[reader]! += weight
    const { mm } = at(pivotChances, pivots)
    if (mm === 0) continue
    loose += weight
    posterior.tally.add('pivots', [`pivots.loose=${mm}`], weight)
  }
  return loose
}

/** Adds up everything that the possible beds say, and what each says of whole machines. */
export const posteriorOf = (
  beds: readonly PossibleBed[],
  looks: readonly Look[],
): { posterior: Posterior; machines: BedMachines[] } => {
  const posterior = nothing(looks.length)
  const firm = at(pivotChances, 0).chance
  const logs = beds.map(({ state, sums, log }) => {
    const isHidden = sums.depth !== 'loose' && hidesPushes(state, looks)
    return { isHidden, log: isHidden ? log - Math.log(firm) : log }
  })
  const whole = logSum(logs.map(({ log }) => log))
  const shares = logs.map(({ log }) => Math.exp(log - whole))
  const kept = shares.reduce((sum, share) => (share < leastBed ? sum : sum + share), 0)
  const likely = beds.flatMap((bed, n) => {
    const { isHidden } = at(logs, n)
    const share = at(shares, n) / kept
    if (share < leastBed) return []
    if (isHidden)
      for (const { mm, chance } of pivotChances)
        if (mm > 0) posterior.tally.add('pivots', [`pivots.loose=${mm}`], share * chance)
    const weights = weightsOf(bed, share)
    const loose = addHidden(posterior, bed, weights)
    addWide(posterior, bed, share)
    return [{ bed, share, weights, loose: isHidden ? 1 - firm : loose / share }]
  })
  // Beds that take part in the looks alike say the same of their strips.
  const groups = Map.groupBy(likely, ({ bed }) => bed.sums.key)
  const machines = [...groups.values()].flatMap((group): BedMachines[] => {
    const weights = new Float64Array(at(group, 0).weights.length)
    for (const one of group) addTo(weights, one.weights)
    const own = addBed(at(group, 0).bed.sums, weights, posterior.tally)
    addNeedleWays(own.whole.needles, posterior.tally)
    addTo(posterior.slips, own.slips)
    addTo(posterior.rightStrips, own.rightStrips)
    return group.map(({ bed, share, loose }) => ({ bed, whole: own.whole, share, loose }))
  })
  return { posterior, machines }
}
