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

/** Work that pauses, so that whoever asks for it can do something else in between. */
type Pausing<Made> = Generator<undefined, Made>

function* rowsFrom(run: Run, first: number, count: number): Pausing<SampleRow[]> {
  const rows: SampleRow[] = []
  for (let pass = first; pass < first + count; pass++) {
    rows.push(rowAt(run, pass))
    yield
  }
  return rows
}

/** The first pass whose row is wrong, in two repeats of the card or just after a turn that was short; null for none. */
function* firstWrong(run: Run, repeat: number): Pausing<number | null> {
  const repeats = Array.from({ length: 2 * repeat }, (_, n) => n + 2)
  for (const pass of [...repeats, ...oddTurns(run.condition).map((turn) => turn + 1)]) {
    if (rowAt(run, pass).wrong.length > 0) return pass
    yield
  }
  return null
}

/**
 * Rows of fabric up to the one that pass `pass` sets out; where nothing is wrong in them, rows around the first that
 * is. Pass 1 knits plain whatever the card says, so a sample begins with pass 2 or later. Pauses after each row.
 */
export function* makeSample(run: Run, pass: number): Pausing<Sample> {
  const { bed, card } = run.condition
  const repeat = card?.length ?? 1
  const count = rowCount(repeat)
  const rows = yield* rowsFrom(run, Math.max(2, pass + 2 - count), count)
  if (rows.some(({ wrong }) => wrong.length > 0)) return { bed, rows }
  const found = yield* firstWrong(run, repeat)
  if (found === null) return { bed, rows }
  return { bed, rows: yield* rowsFrom(run, Math.max(2, found + 1 - Math.ceil(count / 2)), count) }
}

/** The same sample, made at once. */
export const sampleOf = (run: Run, pass: number): Sample => {
  const work = makeSample(run, pass)
  let step = work.next()
  while (step.done !== true) step = work.next()
  return step.value
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
