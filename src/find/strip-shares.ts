import { dimensions } from '../mechanism/dimensions.ts'
import { at, lastOf } from '../mechanism/lookup.ts'
import { toStrip } from '../mechanism/indices.ts'
import type { StateSums } from './bed-sums.ts'
import { Blocks, type StripBlock } from './blocks.ts'
import { readers, slowChances } from './chances.ts'
import type { CloseStrip } from './close-strip.ts'
import { ColumnShares } from './column-shares.ts'
import { addFastShares } from './fast-shares.ts'
import { stripColumns } from './frame.ts'
import { stripChancesOf } from './hidden.ts'
import { NeedleShares, type NeedleTotals, noNeedleTotals, type Slips, slipsOf } from './needle-shares.ts'
import { Offers } from './offers.ts'
import { oilStates } from './oil-states.ts'
import { stripPlace } from './place.ts'
import { addSlowShares } from './slow-shares.ts'
import type { Tally } from './tally.ts'
import { followersOf } from './frame.ts'

const { strips } = dimensions

/** Weights below this share of the whole are left out of what is said of places. */
const slight = 1e-6

/** What a bed says of whole machines: its strips, and by needle the chance of each way in which it is wrong. */
export interface WholeBed {
  readonly strips: readonly (readonly StripBlock[])[]
  readonly needles: Float64Array
  /** What all this is a share of. */
  readonly share: number
}

/** What one strip of a bed adds up to, while it is added up. */
export interface StripShares {
  readonly state: StateSums
  readonly strip: number
  readonly sums: CloseStrip
  readonly columns: ColumnShares
  readonly block: Blocks
  /** By certainty. */
  readonly offers: readonly Offers[]
}

/** What a strip says of itself, with the weight of each hidden state for a unit of its sum. */
interface Units {
  /** By hidden state: as sound, and as slow, however slow. */
  readonly fast: Float64Array
  readonly slow: Float64Array
}

/** Adds what a strip itself may be in; `weights` are by oil and hidden state, the oil first. */
const addStates = (shares: StripShares, weights: Float64Array, tally: Tally): Units => {
  const { state, strip, sums, columns, block, offers } = shares
  const { byHand } = state.frame.setting
  const count = state.hidden.length
  const units = { fast: new Float64Array(count), slow: new Float64Array(count) }
  const unseen = new Float64Array(readers.length)
  for (const [o, oil] of oilStates.entries()) {
    const chances = stripChancesOf(byHand, strip, oil.strips)
    const [seized, over] = [chances.seized * sums.seized, chances.over * sums.over]
    for (let h = 0; h < count; h++) {
      const weight = weights[o * count + h]!
      if (weight === 0) continue
      const unit = weight / (chances.sound * sums.fast[h]! + chances.slow * sums.slow[h]! + seized + over)
      block.seized += unit * seized
      block.over += unit * over
      unseen[state.hidden[h]!.reader]! += unit * (seized + over)
      units.fast[h]! += unit * chances.sound
      units.slow[h]! += unit * chances.slow
    }
  }
  const place = stripPlace(toStrip(strip + 1))
  tally.add(place, [`strip.${strip + 1}.seized`], block.seized)
  tally.add(place, [`strip.${strip + 1}.over`], block.over)
  for (const [n, { ms, chance }] of slowChances.entries()) {
    const weight = units.slow.reduce(
      (sum, unit, h) => sum + unit * chance * sums.slowBy[h * slowChances.length + n]!,
      0,
    )
    tally.add(place, [`strip.${strip + 1}.slow=${ms}`], weight)
  }
  for (const column of stripColumns(strip)) {
    for (const [reader, weight] of unseen.entries())
      if (weight > 0) columns.addUnseen(column, reader, byHand, weight)
    const followers = followersOf(state.frame, column, 0)
    lastOf(offers).add(followers, 0, block.seized)
    lastOf(offers).add(followers, state.frame.bed.shifted, block.over)
  }
  return units
}

/** Adds everything that a strip says, to a tally and to the totals of its columns and needles; gives the chance that it is right. */
const addStrip = (
  state: StateSums,
  strip: number,
  weights: Float64Array,
  tally: Tally,
  columns: ColumnShares,
  totals: NeedleTotals,
  slips: Slips,
): { right: number; block: Blocks } => {
  const sums = at(state.strips, strip)
  const offers = sums.noted.map(() => new Offers())
  const shares: StripShares = { state, strip, sums, columns, block: new Blocks(), offers }
  const units = addStates(shares, weights, tally)
  const right = addFastShares(shares, units.fast, tally)
  if (units.slow.reduce((sum, unit, h) => sum + unit * sums.slow[h]!, 0) > slight)
    addSlowShares(shares, units.slow)
  const { followers } = state.frame.layout
  const own = stripColumns(strip).flatMap((column) => followers[column]!.needles)
  for (const [g, one] of offers.entries()) {
    const needles = new NeedleShares(at(sums.noted, g).needles)
    one.addTo(needles)
    needles.addTo(totals, own, state.frame.bed.looks, slips)
  }
  return { right, block: shares.block }
}

/** What a bed adds up to. */
export interface BedShares {
  readonly whole: WholeBed
  /** By needle and look: the chance that the note is a slip, or of a needle that nothing explains. */
  readonly slips: Float64Array
  /** By strip from 0: the chance that it and its three columns are right. */
  readonly rightStrips: Float64Array
}

/** Adds everything that a bed says to a tally; `weights` are by oil and hidden state, the oil first. */
export const addBed = (state: StateSums, weights: Float64Array, tally: Tally): BedShares => {
  const { looks } = state.frame.bed
  const slips = slipsOf(state.frame.tables, state.frame.setting.slip)
  const columns = new ColumnShares()
  const totals = noNeedleTotals(looks.length)
  const rightStrips = new Float64Array(strips)
  const blocks: StripBlock[][] = []
  for (let strip = 0; strip < strips; strip++) {
    const { right, block } = addStrip(state, strip, weights, tally, columns, totals, slips)
    rightStrips[strip] = right
    blocks.push(block.list())
  }
  columns.addTo(tally)
  const share = weights.reduce((sum, weight) => sum + weight, 0)
  return { whole: { strips: blocks, needles: totals.ways, share }, slips: totals.slips, rightStrips }
}
