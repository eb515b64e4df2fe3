import { at } from '../mechanism/lookup.ts'
import type { StripBlock } from './blocks.ts'
import { columnChances, readers, stickyChances } from './chances.ts'
import type { PossibleBed } from './close-search.ts'
import { columnStates, partsOf, partsWith } from './fast-lines.ts'
import type { Hidden } from './hidden.ts'
import { certainties, type Peaks } from './peaks.ts'
import { type Numbers, pickBy, pickIndex } from './seeded.ts'
import { type ColumnState, type FastSums, overSets } from './strip-sums.ts'

/** What a column of a drawn machine is. */
export interface DrawnColumn {
  readonly state: ColumnState
  /** Share of turns at which a sticky pin does not rise; 0 for any other. */
  readonly stays: number
  /** Chance that a push which suffices does so this time; 1 where nothing is loose. */
  readonly certainty: number
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
  const { peaks } = sums.frame.bed
  const suffices = at(peaks.sufficient, hidden.wear)
  const shares = hidden.pivots === 0 ? null : at(at(peaks.certaintyChances(), hidden.wear), hidden.pivots)
  const own = at(at(columns, set), column)
  if (!shares) return ofParts(own, partsOf(line, hidden, peaks), 1)
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
  partsOf(
    at(at(at(at(sums.strips, strip).lines, hidden.reader), set), column),
    hidden,
    sums.frame.bed.peaks,
  ).reduce((sum, value) => sum + value, 0)

const pickColumn = (options: readonly Option[], next: Numbers): DrawnColumn =>
  pickBy(options, ({ weight }) => weight, next).column

/** The columns of a strip that follows at once. */
export const fastColumns = (
  bed: PossibleBed,
  strip: number,
  hidden: Hidden,
  next: Numbers,
): DrawnColumn[] => {
  const weights = overSets.map((set) =>
    [0, 1, 2].reduce((product, column) => product * columnTotal(bed, strip, set, column, hidden), 1),
  )
  const set = at(overSets, pickIndex(weights, next))
  return [0, 1, 2].map((column) => pickColumn(columnOptions(bed, strip, set, column, hidden), next))
}

/** A column that its strip hides: as likely wrong as before, but for what a hand found. */
export const unseenColumn = (
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

/** The columns of a slow strip; `blocks` are what it may be with them. */
export const slowColumns = (
  blocks: readonly StripBlock[],
  { wear }: Hidden,
  peaks: Peaks,
  next: Numbers,
): DrawnColumn[] => {
  const slow = blocks.filter(({ strip }) => strip === 'slow')
  if (slow.length === 0) return [right, right, right]
  const suffices = at(peaks.sufficient, wear)
  return pickBy(slow, ({ weight }) => weight, next).columns.map((kind): DrawnColumn => {
    if (kind === 'right') return next() < suffices ? right : { ...right, state: 'worn' }
    return { state: kind, stays: kind === 'sticky' ? halfSticky : 0, certainty: 1 }
  })
}
