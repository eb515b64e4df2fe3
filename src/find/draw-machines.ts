import { at } from '../mechanism/lookup.ts'
import type { StripBlock } from './blocks.ts'
import { columnChances, readers, slowChances, stickyChances } from './chances.ts'
import { columnStates, partsOf, partsWith } from './fast-lines.ts'
import { type Oil, oils } from './finding.ts'
import { stripColumns } from './frame.ts'
import { type Hidden, stripChancesOf } from './hidden.ts'
import { certaintyChances, certainties, sufficientChances } from './peaks.ts'
import type { PossibleBed } from './close-search.ts'
import { numbersFrom, type Numbers, pickBy, pickIndex } from './seeded.ts'
import { type ColumnState, type FastSums, overSets } from './strip-sums.ts'
import type { BedMachines } from './whole-machines.ts'

/** What a column of a drawn machine is. */
export interface DrawnColumn {
  readonly state: ColumnState
  /** Share of turns at which a sticky pin does not rise; 0 for any other. */
  readonly stays: number
  /** Chance that a push which suffices does so this time; 1 where nothing is loose. */
  readonly certainty: number
}

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
  readonly oil: Oil
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

const right: DrawnColumn = { state: 'sound', stays: 0, certainty: 1 }

/** Something that a column may be, with its weight. */
interface Option {
  readonly column: DrawnColumn
  readonly weight: number
}

/** What a column may be, of which `parts` has what each state adds up to and `sums` how sticky pins are. */
const ofParts = (sums: FastSums[number], parts: Float64Array, certainty: number): Option[] => {
  const by =
    typeof sums === 'number' ? [] : sums.stickyBy.map((value, n) => value * at(stickyChances, n).chance)
  const whole = by.reduce((sum, value) => sum + value, 0)
  return columnStates.flatMap((state, n): Option[] => {
    const weight = at(parts, n)
    if (state !== 'sticky') return [{ column: { state, stays: 0, certainty }, weight }]
    return by.map((value, m) => ({
      column: { state, stays: at(stickyChances, m).share, certainty },
      weight: whole > 0 ? (weight * value) / whole : 0,
    }))
  })
}

/** What a column of a strip that follows at once may be, where the pins of `set` stay pushed over. */
const columnOptions = (
  { sums }: PossibleBed,
  strip: number,
  set: number,
  column: number,
  hidden: Hidden,
): Option[] => {
  const { lines, columns } = at(sums.strips, strip)
  const line = at(at(at(lines, hidden.reader), set), column)
  const suffices = at(sufficientChances(), hidden.wear)
  const shares = hidden.pivots === 0 ? null : at(at(certaintyChances(), hidden.wear), hidden.pivots)
  const own = at(at(columns, set), column)
  if (!shares) return ofParts(own, partsOf(line, hidden), 1)
  return [
    ...ofParts(own, partsWith(line, 1 - suffices, 0, 0), 1),
    ...[...shares].flatMap((share, g) =>
      share > 0 ? ofParts(own, partsWith(line, share, g, share), at(certainties, g)) : [],
    ),
  ]
}

/** What all that a column may be adds up to, where the pins of `set` stay pushed over. */
const columnTotal = (
  { sums }: PossibleBed,
  strip: number,
  set: number,
  column: number,
  hidden: Hidden,
): number =>
  partsOf(at(at(at(at(sums.strips, strip).lines, hidden.reader), set), column), hidden).reduce(
    (sum, value) => sum + value,
    0,
  )

const pickColumn = (options: readonly Option[], next: Numbers): DrawnColumn =>
  pickBy(options, ({ weight }) => weight, next).column

/** The columns of a strip that follows at once. */
const fastColumns = (bed: PossibleBed, strip: number, hidden: Hidden, next: Numbers): DrawnColumn[] => {
  const weights = overSets.map((set) =>
    [0, 1, 2].reduce((product, column) => product * columnTotal(bed, strip, set, column, hidden), 1),
  )
  const set = at(overSets, pickIndex(weights, next))
  return [0, 1, 2].map((column) => pickColumn(columnOptions(bed, strip, set, column, hidden), next))
}

/** A column that its strip hides: as likely wrong as before, but for what a hand found. */
const unseenColumn = (
  { sums }: PossibleBed,
  column: number,
  { reader }: Hidden,
  next: Numbers,
): DrawnColumn => {
  const { dead, high, over, sticky, other } = columnChances[at(readers, reader)]
  const hand = at(sums.frame.setting.byHand.columns, column)
  const of = (state: ColumnState, weight: number, stays = 0): Option => ({
    column: { state, stays, certainty: 1 },
    weight,
  })
  return pickColumn(
    [
      of('sound', hand.right * (1 - dead - high - over - sticky - other)),
      of('dead', hand.dead * dead),
      of('high', hand.high * high),
      of('over', hand.over * over),
      of('other', hand.right * other),
      ...stickyChances.map(({ share, chance }) => of('sticky', hand.sticky * sticky * chance, share)),
    ],
    next,
  )
}

/** A sticky pin of a slow strip, where nothing says how sticky it is: as often as not. */
const halfSticky = 0.5

const slowColumns = (blocks: readonly StripBlock[], { wear }: Hidden, next: Numbers): DrawnColumn[] => {
  const slow = blocks.filter(({ strip }) => strip === 'slow')
  if (slow.length === 0) return [right, right, right]
  const suffices = at(sufficientChances(), wear)
  return pickBy(slow, ({ weight }) => weight, next).columns.map((kind): DrawnColumn => {
    if (kind === 'right') return next() < suffices ? right : { ...right, state: 'worn' }
    return { state: kind, stays: kind === 'sticky' ? halfSticky : 0, certainty: 1 }
  })
}

const drawStrip = (
  { bed, whole }: BedMachines,
  strip: number,
  hidden: DrawnHidden,
  next: Numbers,
): DrawnStrip => {
  const { seized, over, fast, slowBy } = at(bed.sums.strips, strip)
  const chances = stripChancesOf(bed.sums.frame.setting.byHand, strip, hidden.oil)
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
    return { state: 'slow', slow: which - 3, columns: slowColumns(at(whole.strips, strip), hidden, next) }
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
      const oil = at(oils, Math.floor(n / sums.hidden.length))
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
