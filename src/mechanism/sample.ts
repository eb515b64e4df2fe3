import { type Bed, needlesIn } from './bed.ts'
import { askedRow, knittedRow, type Stitch } from './fabric.ts'
import { type Needle, ofNeedle, toNeedle } from './indices.ts'
import type { Run } from './pass.ts'
import { oddTurns } from './turn.ts'

/** A row of fabric as it comes out and as the card asks for it. Lists have one entry for each needle. */
export interface SampleRow {
  /** The pass that knits it. */
  readonly pass: number
  readonly knitted: readonly Stitch[]
  readonly asked: readonly Stitch[]
  /** Needles in use whose stitch is not the one asked for, from the left. */
  readonly wrong: readonly Needle[]
}

/** Some whole rows of fabric, chosen so that what is wrong with the machine is seen in them. The first knitted first. */
export interface Sample {
  readonly bed: Bed
  readonly rows: readonly SampleRow[]
}

/** The most rows of a sample, and how many it has at least, whatever the card. */
export const sampleRows = { most: 24, least: 12 } as const

/** Whole repeats of the card, as far as they fit: an eye finds a fault by what comes again. */
const rowCount = (repeat: number): number =>
  Math.min(sampleRows.most, repeat * Math.ceil(sampleRows.least / repeat))

const rowAt = (run: Run, pass: number): SampleRow => {
  const knitted = knittedRow(run, pass)
  const asked = askedRow(run, pass)
  const wrong = needlesIn(run.condition.bed).filter(
    (needle) => ofNeedle(knitted, needle) !== ofNeedle(asked, needle),
  )
  return { pass, knitted, asked, wrong }
}

const rowsFrom = (run: Run, first: number, count: number): SampleRow[] =>
  Array.from({ length: count }, (_, n) => rowAt(run, first + n))

/** The first pass whose row is wrong, in two repeats of the card or just after a turn that was short; null for none. */
const firstWrong = (run: Run, repeat: number): number | null => {
  const isWrong = (pass: number): boolean => rowAt(run, pass).wrong.length > 0
  for (let pass = 2; pass < 2 + 2 * repeat; pass++) if (isWrong(pass)) return pass
  return (
    oddTurns(run.condition)
      .map((pass) => pass + 1)
      .find(isWrong) ?? null
  )
}

/**
 * Rows of fabric up to the one that pass `pass` sets out; where nothing is wrong in them, rows around the first that
 * is. Pass 1 knits plain whatever the card says, so a sample begins with pass 2 or later.
 */
export const sampleOf = (run: Run, pass: number): Sample => {
  const { bed, card } = run.condition
  const repeat = card?.length ?? 1
  const count = rowCount(repeat)
  const rows = rowsFrom(run, Math.max(2, pass + 2 - count), count)
  if (rows.some(({ wrong }) => wrong.length > 0)) return { bed, rows }
  const found = firstWrong(run, repeat)
  return {
    bed,
    rows: found === null ? rows : rowsFrom(run, Math.max(2, found + 1 - Math.ceil(count / 2)), count),
  }
}

/** Every needle that is wrong in some row of a sample, from the left. */
export const wrongNeedles = ({ rows }: Sample): Needle[] =>
  [...new Set(rows.flatMap(({ wrong }) => wrong))].sort((a, b) => a - b)

/** First needle of a window of `width` needles in use that shows as much as it can of what is wrong, in its middle. */
export const windowOf = (sample: Sample, width: number): Needle => {
  const { first, last } = sample.bed
  if (last - first + 1 <= width) return first
  const wrong = sample.rows.flatMap((row) => row.wrong)
  const middle = (first + last) / 2
  let best = { start: Number(first), count: -1, off: 0 }
  for (let start = first; start <= last + 1 - width; start++) {
    const within = wrong.filter((index) => index >= start && index < start + width)
    const centre = start + (width - 1) / 2
    const mean = within.reduce((sum, index) => sum + index, 0) / within.length
    // What is wrong should be in the middle; among equals, the window nearest to the middle of the bed.
    const off = (within.length > 0 ? Math.abs(centre - mean) : 0) + Math.abs(centre - middle) / 20
    if (within.length > best.count || (within.length === best.count && off < best.off))
      best = { start, count: within.length, off }
  }
  return toNeedle(best.start)
}
