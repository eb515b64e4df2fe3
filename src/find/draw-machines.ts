import { at } from '../mechanism/lookup.ts'
import type { StripBlock } from './blocks.ts'
import { slowChances } from './chances.ts'
import type { PossibleBed } from './close-search.ts'
import { type DrawnColumn, fastColumns, slowColumns, unseenColumn } from './drawn-columns.ts'
import { stripColumns } from './frame.ts'
import { type Hidden, stripChancesOf } from './hidden.ts'
import { oilStates, type OilState } from './oil-states.ts'
import { numbersFrom, type Numbers, pickBy, pickIndex } from './seeded.ts'
import type { BedMachines } from './whole-machines.ts'

/** A strip of a drawn machine with its three columns. */
export interface DrawnStrip {
  readonly state: StripBlock['strip']
  /** How slow it is: an index in the table of slow strips; of no meaning for any other. */
  readonly slow: number
  readonly columns: readonly DrawnColumn[]
}

/** A hidden state of a bed, by its index among those of the bed's sums, with an oil. */
interface DrawnHidden extends Hidden {
  readonly index: number
  readonly oil: OilState
}

/** One whole machine out of those that are still possible; of its needles it says nothing. */
export interface DrawnMachine {
  readonly bed: PossibleBed
  readonly hidden: DrawnHidden
  /** State of the retainer bar: an index in its table, -1 for a sound one. */
  readonly retainer: number
  /** Whether its pivots are loose; a bed that hides what pushes do says nothing of how much. */
  readonly isLoose: boolean
  readonly strips: readonly DrawnStrip[]
}

const drawStrip = (
  { bed, whole }: BedMachines,
  strip: number,
  hidden: DrawnHidden,
  next: Numbers,
): DrawnStrip => {
  const { seized, over, fast, slowBy } = at(bed.sums.strips, strip)
  const chances = stripChancesOf(bed.sums.frame.setting.byHand, strip, hidden.oil.strips)
  const weights = [
    chances.sound * at(fast, hidden.index),
    chances.seized * seized,
    chances.over * over,
    ...slowChances.map(
      ({ chance }, n) => chances.slow * chance * at(slowBy, hidden.index * slowChances.length + n),
    ),
  ]
  const which = pickIndex(weights, next)
  if (which > 2)
    return {
      state: 'slow',
      slow: which - 3,
      columns: slowColumns(at(whole.strips, strip), hidden, bed.sums.frame.bed.peaks, next),
    }
  if (which === 0) return { state: 'right', slow: 0, columns: fastColumns(bed, strip, hidden, next) }
  return {
    state: which === 1 ? 'seized' : 'over',
    slow: 0,
    columns: stripColumns(strip).map((column) => unseenColumn(bed, column, hidden, next)),
  }
}

/**
 * Machines drawn at random from what is still possible, each as likely as the sums have it, the same for the same seed:
 * first the state of the whole bed with wear, oil, reader and pivots, evenly over all that is possible; then each strip
 * with its columns under those.
 */
export const drawMachines = (beds: readonly BedMachines[], count: number, seed: number): DrawnMachine[] => {
  const next = numbersFrom(seed)
  const hidden = beds.flatMap((one) => {
    const { logs, sums } = one.bed
    const most = logs.reduce((best, log) => Math.max(best, log), -Infinity)
    const weights = logs.map((log) => Math.exp(log - most))
    const whole = weights.reduce((sum, weight) => sum + weight, 0)
    return [...weights].map((weight, n) => {
      const index = n % sums.hidden.length
      const oil = at(oilStates, Math.floor(n / sums.hidden.length))
      const state: DrawnHidden = { ...at(sums.hidden, index), index, oil }
      return { one, state, weight: (one.share * weight) / whole }
    })
  })
  const step = hidden.reduce((sum, { weight }) => sum + weight, 0) / count
  const machines: DrawnMachine[] = []
  let reached = 0
  let due = next() * step
  for (const { one, state, weight } of hidden) {
    reached += weight
    for (; due < reached && machines.length < count; due += step) {
      machines.push({
        bed: one.bed,
        hidden: state,
        retainer: pickBy(one.bed.bars, ({ share }) => share, next).retainer,
        isLoose: state.pivots > 0 || (one.bed.sums.depth !== 'loose' && next() < one.loose),
        strips: one.whole.strips.map((_, strip) => drawStrip(one, strip, state, next)),
      })
    }
  }
  return machines
}
