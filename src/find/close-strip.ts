import { caseCount, casesOf, meanOfCases } from './case-chances.ts'
import { readers, slowChances } from './chances.ts'
import type { Choices } from './choices.ts'
import type { Depth } from './bed-sums.ts'
import { type Frame, type NotedStrip, notedStripOf } from './frame.ts'
import { type Hidden, type StripSums } from './hidden.ts'
import { type FastLines, fastLinesOf, fastValue } from './fast-lines.ts'
import { certainties, meanCertainty } from './peaks.ts'
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
  /** By certainty: the terms of the slow strip that come to most, the first to most. */
  readonly terms: readonly (readonly KeptTerm[])[]
  /** How a column's looks may have been chosen, as far as that was asked for before. */
  readonly chosen: Map<string, Choices>
}

/** Of a slow strip's terms those are kept that have such a share of the largest, and no more than so many. */
const keptShare = 1e-6
const mostKept = 1500

/** A slow strip's terms, added up and the largest kept. */
class Terms {
  /** By reader and by the cases of the three columns. */
  readonly tensor: Float64Array
  private readonly size: number
  private kept: KeptTerm[] = []
  private most = 0

  constructor(size: number) {
    this.size = size
    this.tensor = new Float64Array(readers.length * size ** 3)
  }

  add(over: number, [one, two, three]: KeptTerm['entries'], value: number, size: number): void {
    const { tensor, size: cases } = this
    const cube = cases ** 3
    for (const { when: a, chances: first } of one.whens)
      for (const { when: b, chances: second } of two.whens)
        for (const { when: c, chances: third } of three.whens) {
          const place = (a * cases + b) * cases + c
          for (let r = 0; r < readers.length; r++)
            tensor[r * cube + place]! += first[r]! * second[r]! * third[r]! * value
        }
    if (size < keptShare * this.most) return
    this.most = Math.max(this.most, size)
    this.kept.push({ entries: [one, two, three], value, over, size })
    if (this.kept.length >= 2 * mostKept) this.kept = this.largest()
  }

  /** The terms that come to most, the first to most. */
  largest(): KeptTerm[] {
    return this.kept
      .filter(({ size }) => size > keptShare * this.most)
      .sort((one, other) => other.size - one.size)
      .slice(0, mostKept)
  }
}

/** What a slow strip adds up to, by hidden state and slowness; `tensors` are by certainty. */
const slowOf = (
  { bed: { lastings } }: Frame,
  tensors: readonly Float64Array[],
  hidden: readonly Hidden[],
): Float64Array => {
  const cases = casesOf(lastings)
  const size = caseCount(lastings)
  const all = new Float64Array(hidden.length * slowChances.length)
  for (const [h, { wear, pivots, reader }] of hidden.entries()) {
    const tensor = tensors[tensors.length === 1 ? 0 : meanCertainty(wear, pivots)]!
    for (let n = 0; n < slowChances.length; n++)
      all[h * slowChances.length + n] = meanOfCases(cases[wear]![n]!, size, tensor, reader * size ** 3)
  }
  return all
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
  const columns = noted.map((one) => overSets.map((over) => fastSumsOf(one, strip, over, one !== exact)))
  const lines = fastLinesOf(columns)
  const [seized, over] = [stripValue(exact, strip, 0), stripValue(exact, strip, -1)]
  const asked = fastTotal(lastOf(columns)[0]!, 'usual', 1)
  const least = Math.max(seized, over, asked) / 100
  const terms = noted.map((one) => {
    const all = new Terms(caseCount(frame.bed.lastings))
    const slowDepth = one !== exact ? 'usual' : depth === 'whole' ? 'whole' : 'close'
    for (const set of one === exact ? overSets : [0])
      eachSlowTerm(one, strip, set, least, slowDepth, (a, b, c, value, size) => {
        all.add(set, [a, b, c], value, size)
      })
    return all
  })
  const slowBy = slowOf(
    frame,
    terms.map(({ tensor }) => tensor),
    hidden,
  )
  return {
    log: exact.needles.log,
    seized,
    over,
    fast: Float64Array.from(hidden, (one) => fastValue(lines, one)),
    slow: Float64Array.from(hidden, (_, h) =>
      slowChances.reduce((sum, { chance }, n) => sum + chance * slowBy[h * slowChances.length + n]!, 0),
    ),
    slowBy,
    noted,
    columns: lastOf(columns),
    lines,
    terms: terms.map((all) => all.largest()),
    chosen: new Map(),
  }
}
