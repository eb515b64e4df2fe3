import { needlesOfStrip, wholeBed } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { allNeedles, allStrips } from '../mechanism/indices.ts'
import { at } from '../mechanism/lookup.ts'
import type { Setting } from './bed-sums.ts'
import { type ByHand, byHandOf } from './by-hand.ts'
import {
  columnChances,
  needleChances,
  pivotChances,
  readers,
  retainerMs,
  stripChances,
  wearChances,
} from './chances.ts'
import {
  type Finding,
  type Oil,
  oils,
  type PlaceFinding,
  type Together,
  type Unexplained,
  type Way,
} from './finding.ts'
import { logSum } from './log-sum.ts'
import { type Look, looksOf } from './looks.ts'
import { type Cause, columnPlace, type Place, stripPlace, widePlaces } from './place.ts'
import { hidesPushes, type PossibleBed, possibleBeds } from './possible-beds.ts'
import { BedPosterior, type Posterior } from './posterior.ts'
import type { Query } from './query.ts'
import { stripColumns } from './strip-sums.ts'
import { Tally } from './tally.ts'
import { type BedMachines, rankMachines } from './whole-machines.ts'

/** Places less likely wrong than this are left out. */
const leastWrong = 0.01
/** A note counts as unexplained from this chance on. */
const leastSlip = 0.5
/** Beds with less than this share of the whole, together with the rest of their kind, change nothing that is said. */
const leastBed = 5e-4
/** Hidden states with less than this share of the whole are left out of what is said. */
const slight = 1e-6

/** By row of a card that was under the pins: the looks in which it was. */
const rowsOfLooks = (looks: readonly Look[]): number[] => {
  const rows = new Map<string, number>()
  for (const [n, { view }] of looks.entries()) {
    if (!view.card) continue
    const row = (view.pass - 1) % view.card.length
    const key = `${row + (view.shift ?? 0)} ${view.card.join()}`
    rows.set(key, (rows.get(key) ?? 0) | (1 << n))
  }
  return [...rows.values()]
}

/** What the sums need of a query beside its looks. */
export const sumSettingOf = (query: Query, looks: readonly Look[]): Setting => ({
  bed: wholeBed,
  columnOne: query.columnOne,
  slip: query.slip,
  rows: rowsOfLooks(looks),
  byHand: byHandOf(query.checks),
  key: JSON.stringify([
    query.slip,
    query.columnOne,
    query.checks,
    looks.map(({ view: { pass, speed, shift, card } }) => [pass, speed, shift, card]),
  ]),
  noted: allStrips.map((strip) =>
    needlesOfStrip(strip, query)
      .map((needle) => looks.map(({ noted }) => noted[needle]).join(''))
      .join(' '),
  ),
})

/** Sets of places that are wrong at once, with what each has of the whole. */
type WideSets = { places: readonly Place[]; weight: number }[]

const addWide = (posterior: Posterior, sets: WideSets, bed: PossibleBed, weight: number): void => {
  const { causes } = bed.state
  for (const { place, causes: own } of causes) posterior.tally.add(place, own, weight)
  for (const { retainer, share } of bed.bars) {
    const places: Place[] = causes.map(({ place }) => place)
    if (retainer >= 0) {
      places.push('retainer')
      posterior.tally.add('retainer', [`retainer.worn=${at(retainerMs, retainer)}`], weight * share)
    }
    sets.push({ places, weight: weight * share })
  }
}

/** Adds up everything that the possible beds say. */
const posteriorOf = (
  beds: readonly PossibleBed[],
  looks: readonly Look[],
): { posterior: Posterior; machines: BedMachines[] } => {
  const machines: BedMachines[] = []
  const wide: WideSets = []
  const oil: Record<Oil, number> = { fresh: 0, old: 0, set: 0 }
  const posterior = {
    tally: new Tally(),
    oil,
    wear: new Float64Array(wearChances.length),
    reader: new Float64Array(readers.length),
    rightStrips: new Float64Array(dimensions.strips),
    wide,
    slips: new Float64Array(dimensions.needles * looks.length),
  }
  const firm = at(pivotChances, 0).chance
  const logs = beds.map(({ state, sums, log }) => {
    const isHidden = sums.depth !== 'loose' && hidesPushes(state, looks)
    return { isHidden, log: isHidden ? log - Math.log(firm) : log }
  })
  const whole = logSum(logs.map(({ log }) => log))
  const shares = logs.map(({ log }) => Math.exp(log - whole))
  const kept = shares.reduce((sum, share) => (share < leastBed ? sum : sum + share), 0)
  for (const [n, bed] of beds.entries()) {
    const { isHidden, log } = at(logs, n)
    const share = Math.exp(log - whole) / kept
    if (share < leastBed) continue
    if (isHidden)
      for (const { mm, chance } of pivotChances)
        if (mm > 0) posterior.tally.add('pivots', [`pivots.loose=${mm}`], share * chance)
    const own = logSum(bed.hidden.map(({ log }) => log))
    const weights = bed.hidden.map((hidden) => ({ hidden, weight: share * Math.exp(hidden.log - own) }))
    for (const { hidden, weight } of weights) {
      oil[at(oils, hidden.oil)] += weight
      posterior.wear[hidden.wear]! += weight
      posterior.reader[hidden.reader]! += weight
      const { mm } = at(pivotChances, hidden.pivots)
      if (mm > 0) posterior.tally.add('pivots', [`pivots.loose=${mm}`], weight)
    }
    addWide(posterior, wide, bed, share)
    const loose = isHidden
      ? 1 - firm
      : weights.reduce((sum, { hidden, weight }) => sum + (hidden.pivots > 0 ? weight / share : 0), 0)
    machines.push({
      bed,
      whole: new BedPosterior(bed, posterior).addAll(weights.filter(({ weight }) => weight > slight)),
      share,
      loose,
    })
  }
  return { posterior, machines }
}

/** Chance before the notes, under the oil and the reader that they speak for; null for what reaches the whole bed. */
const beforeOf = ({ oil, reader }: Posterior, place: Place): number | null => {
  if (place.startsWith('strip.'))
    return oils.reduce((sum, name) => {
      const { slow, seized, over } = stripChances[name]
      return sum + oil[name] * (slow + seized + over)
    }, 0)
  if (place.startsWith('column.'))
    return readers.reduce((sum, name, n) => {
      const { dead, high, over, sticky, other } = columnChances[name]
      return sum + at(reader, n) * (dead + high + over + sticky + other)
    }, 0)
  const { noHold, stiff, gone, other } = needleChances
  return place.startsWith('needle.') ? noHold + stiff + gone + other : null
}

/** A way parted into its causes, where what was found by hand tells them apart. */
const partedBy = (byHand: ByHand, causes: readonly Cause[], weight: number): Way[] => {
  const factors = causes.map((cause) => byHand.causes([cause], causes))
  const whole = factors.reduce((sum, factor) => sum + factor, 0)
  return Math.max(...factors) === Math.min(...factors)
    ? [{ causes, probability: weight }]
    : causes.map((cause, n) => ({ causes: [cause], probability: (weight * at(factors, n)) / whole }))
}

const placesOf = (posterior: Posterior, byHand: ByHand): PlaceFinding[] =>
  posterior.tally
    .entries()
    .map(({ place, ways }): PlaceFinding => ({
      place,
      wrong: Math.min(
        1,
        ways.reduce((sum, { weight }) => sum + weight, 0),
      ),
      before: beforeOf(posterior, place),
      ways: ways
        .flatMap(({ causes, weight }) => partedBy(byHand, causes, weight))
        .sort((one, other) => other.probability - one.probability),
    }))
    .filter(({ wrong }) => wrong >= leastWrong)
    .sort((one, other) => other.wrong - one.wrong)

const wearOf = (chances: Float64Array): Finding['wear'] => {
  const quantile = (share: number): number => {
    let sum = 0
    for (const [n, chance] of chances.entries()) if ((sum += chance) >= share) return at(wearChances, n).wear
    return 1
  }
  const mean = chances.reduce((sum, chance, n) => sum + chance * at(wearChances, n).wear, 0)
  return { mean, low: quantile(0.05), high: quantile(0.95) }
}

const togetherLimits = { place: 0.03, nearSure: 0.95, set: 0.5 } as const

const togetherOf = (posterior: Posterior, places: readonly PlaceFinding[]): Together[] => {
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

const unexplainedOf = ({ slips }: Posterior, looks: number): Unexplained[] =>
  allNeedles.flatMap((needle) =>
    Array.from({ length: looks }, (_, pass) => ({
      pass,
      needle,
      chance: at(slips, needle * looks + pass),
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
    together: togetherOf(posterior, places),
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
