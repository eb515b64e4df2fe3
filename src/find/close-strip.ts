import { caseCount, casesOf, meanOfCases } from './case-chances.ts'
import { readers, slowChances } from './chances.ts'
import { bitCount } from './bits.ts'
import type { Choices } from './choices.ts'
import type { Depth } from './bed-sums.ts'
import { type Frame, type NotedStrip, notedStripOf } from './frame.ts'
import { type Hidden, type StripSums } from './hidden.ts'
import { type FastLines, fastLinesOf, fastValues, lineTotalsOf } from './fast-lines.ts'
import { certainties } from './peaks.ts'
import type { SlowEntry } from './slow-entries.ts'
import { eachSlowTerm } from './slow-terms.ts'
import { type FastSums, fastSumsOf, fastTotal, overSets, stripValue } from './strip-sums.ts'
import { lastOf } from '../mechanism/lookup.ts'

/** A term of a slow strip's sum. */
export interface KeptTerm {
  /** What its three columns do, and how likely the notes are. */
  readonly entries: readonly [SlowEntry, SlowEntry, SlowEntry]
  readonly value: number
  /** The set of columns that stay pushed over. */
  readonly over: number
  /** About what it comes to. */
  readonly size: number
}

/** The close sums of a strip. */
export interface CloseStrip extends StripSums {
  /** By hidden state and slowness: what it adds up to where it is so slow. */
  readonly slowBy: Float64Array
  /** By certainty; the last is that of pivots that are not loose. */
  readonly noted: readonly NotedStrip[]
  /** By set of columns that stay pushed over: the sums of its columns where pushes are certain. */
  readonly columns: readonly FastSums[]
  /** By reader, by such a set, by column: what the column adds up to, part by part. */
  readonly lines: FastLines
  /** The same added up over its parts. */
  readonly totals: FastLines
  /** By certainty: the terms of the slow strip that come to most, the first to most. */
  readonly terms: readonly (readonly KeptTerm[])[]
  /** How a column's looks may have been chosen, as far as that was asked for before. */
  readonly chosen: Map<string, Choices>
}

/** Of a slow strip's terms those are kept that have such a share of the largest, and no more than so many. */
const keptShare = 1e-6
const mostKept = 1500

/** Numbers that each strip in turn adds its terms up in: they take too much room to be made again for each. */
let scratch = new Float64Array(0)

const emptyTensor = (length: number): Float64Array => {
  if (scratch.length < length) scratch = new Float64Array(length)
  const tensor = scratch.subarray(0, length)
  tensor.fill(0)
  return tensor
}

/** A slow strip's terms, added up and the largest kept. */
class Terms {
  private readonly tensor: Float64Array
  private readonly size: number
  private kept: KeptTerm[] = []
  /** What a term must come to, to be kept. */
  private least = 0
  /** The entries of the first two columns at hand, and by case of the third and by reader what goes with them. */
  private one: SlowEntry | null = null
  private two: SlowEntry | null = null
  private readonly row: Float64Array
  private touched: number[] = []

  constructor(size: number) {
    this.size = size
    this.tensor = emptyTensor(readers.length * size ** 3)
    this.row = new Float64Array(size * readers.length)
  }

  /** By reader and by the cases of the three columns: what all terms add up to. */
  sums(): Float64Array {
    this.settle()
    return this.tensor
  }

  /** Puts what was gathered for two entries where it belongs. */
  private settle(): void {
    const { one, two, row, touched, tensor, size } = this
    if (!one || !two) return
    const cube = size ** 3
    for (const { when: a, chances: first } of one.whens)
      for (const { when: b, chances: second } of two.whens)
        for (let r = 0; r < readers.length; r++) {
          const both = first[r]! * second[r]!
          const from = r * cube + (a * size + b) * size
          for (const c of touched) tensor[from + c]! += both * row[c * readers.length + r]!
        }
    for (const c of touched) row.fill(0, c * readers.length, (c + 1) * readers.length)
    this.touched = []
  }

  add(over: number, one: SlowEntry, two: SlowEntry, three: SlowEntry, value: number, size: number): void {
    if (one !== this.one || two !== this.two) {
      this.settle()
      this.one = one
      this.two = two
    }
    const { row } = this
    for (const { when, chances } of three.whens) {
      const from = when * readers.length
      if (row[from] === 0 && !this.touched.includes(when)) this.touched.push(when)
      for (let r = 0; r < readers.length; r++) row[from + r]! += chances[r]! * value
    }
    if (size < this.least) return
    this.least = Math.max(this.least, keptShare * size)
    this.kept.push({ entries: [one, two, three], value, over, size })
    if (this.kept.length < 2 * mostKept) return
    this.kept = this.largest()
    this.least = Math.max(this.least, lastOf(this.kept).size)
  }

  /** The terms that come to most, the first to most. */
  largest(): KeptTerm[] {
    return this.kept
      .filter(({ size }) => size >= this.least)
      .sort((one, other) => other.size - one.size)
      .slice(0, mostKept)
  }
}

/** Writes what a slow strip adds up to, by hidden state and slowness, for hidden states of one certainty. */
const writeSlow = (
  { bed: { lastings } }: Frame,
  tensor: Float64Array,
  hidden: readonly Hidden[],
  isOf: (hidden: Hidden) => boolean,
  slowBy: Float64Array,
): void => {
  const cases = casesOf(lastings)
  const size = caseCount(lastings)
  for (const [h, one] of hidden.entries())
    if (isOf(one))
      for (let n = 0; n < slowChances.length; n++)
        slowBy[h * slowChances.length + n] = meanOfCases(
          cases[one.wear]![n]!,
          size,
          tensor,
          one.reader * size ** 3,
        )
}

/** The close sums of a strip in these hidden states, whose dips meet with the chance `meets`. */
export const closeStripOf = (
  frame: Frame,
  strip: number,
  meets: number,
  depth: Depth,
  hidden: readonly Hidden[],
): CloseStrip => {
  const used = depth === 'loose' ? certainties : [1]
  const noted = used.map((certainty) => notedStripOf(frame, strip, meets, certainty))
  const exact = lastOf(noted)
  // Two pins of one strip that both stay pushed over are so rare that what is rare beside them makes no difference.
  const isRough = (one: NotedStrip, set: number): boolean =>
    one !== exact || (depth !== 'whole' && bitCount(set) > 1)
  const columns = noted.map((one) => overSets.map((set) => fastSumsOf(one, strip, set, isRough(one, set))))
  const lines = fastLinesOf(columns)
  const totals = lineTotalsOf(lines)
  const [seized, over] = [stripValue(exact, strip, 0), stripValue(exact, strip, frame.bed.shifted)]
  const asked = fastTotal(lastOf(columns)[0]!, 'usual', 1)
  const least = Math.max(seized, over, asked) / 100
  const slowBy = new Float64Array(hidden.length * slowChances.length)
  const terms = noted.map((one, g) => {
    const isOf = ({ wear, pivots }: Hidden): boolean =>
      noted.length === 1 || frame.bed.peaks.meanCertainty(wear, pivots) === g
    if (!hidden.some(isOf)) return []
    const all = new Terms(caseCount(frame.bed.lastings))
    const slowDepth = one !== exact ? 'usual' : depth === 'whole' ? 'whole' : 'close'
    for (const set of one === exact ? overSets : [0])
      eachSlowTerm(one, strip, set, least, slowDepth, (a, b, c, value, size) => {
        all.add(set, a, b, c, value, size)
      })
    writeSlow(frame, all.sums(), hidden, isOf, slowBy)
    return all.largest()
  })
  return {
    log: exact.needles.log,
    seized,
    over,
    fast: fastValues(totals, hidden, frame.bed.peaks),
    slow: Float64Array.from(hidden, (_, h) =>
      slowChances.reduce((sum, { chance }, n) => sum + chance * slowBy[h * slowChances.length + n]!, 0),
    ),
    slowBy,
    noted,
    columns: lastOf(columns),
    lines,
    totals,
    terms,
    chosen: new Map(),
  }
}
