import type { Way } from './bed.ts'
import { cams } from './dimensions.ts'
import { sinceLetGo } from './frame.ts'
import type { Outcome } from './gate.ts'
import { type Needle, needleAtSlot, needlesOfBed, ofNeedle } from './indices.ts'
import { at } from './lookup.ts'
import type { Run } from './pass.ts'

/** The two yarns of a patterned row: plain needles knit the first, selected ones the second. */
const yarns = ['first', 'second'] as const
type Yarn = (typeof yarns)[number]

/** What a needle adds to a row of fabric; a needle that was not moved, or is out of use, adds nothing. */
export type Stitch = Yarn | 'none'

/** A strand of one yarn that lies loose behind other stitches, between two stitches of its own. */
export interface Float {
  readonly yarn: Yarn
  /** First and last stitch that it passes behind, as needles. */
  readonly first: Needle
  readonly last: Needle
}

/** The most stitches that a float may pass behind before it catches fingers: common practice, about five. */
export const floatLimit = 5

const stitchOf: Readonly<Record<Outcome, Stitch>> = { plain: 'first', selected: 'second', unmoved: 'none' }

/** A pass knits what the pass before it set out; before pass 2 nothing is set out, and every row is plain. */
const rowOf = (run: Run, pass: number, outcomes: (setting: number) => readonly Outcome[]): Stitch[] => {
  const { first, last } = run.condition.bed
  const setOut = pass > 1 ? outcomes(pass - 1) : null
  return needlesOfBed(run.condition.dimensions.needles).map((needle) =>
    needle < first || needle > last ? 'none' : stitchOf[setOut ? ofNeedle(setOut, needle) : 'plain'],
  )
}

/** Computes each row of a run once. */
const once = (row: (run: Run, pass: number) => Stitch[]): ((run: Run, pass: number) => readonly Stitch[]) => {
  const known = new WeakMap<Run, Map<number, readonly Stitch[]>>()
  return (run, pass) => {
    const rows = known.get(run) ?? new Map<number, readonly Stitch[]>()
    known.set(run, rows)
    const found = rows.get(pass) ?? row(run, pass)
    rows.set(pass, found)
    return found
  }
}

/** The row of fabric that pass `pass` knits, one stitch for each needle. */
export const knittedRow = once((run, pass) =>
  rowOf(run, pass, (setting) => run.passOf(setting).came).map((stitch, index) =>
    at(run.condition.needleGone, index) === 1 ? 'none' : stitch,
  ),
)

/** The same row as the sound machine would knit it from the card as punched. */
export const askedRow = once((run, pass) => rowOf(run, pass, (setting) => run.passOf(setting).asked))

/** Whether a needle has knitted its stitch of this pass: the cams ahead of the presser have it back in line. */
export const hasKnitted = (x: number, needle: Needle, way: Way): boolean =>
  sinceLetGo(x, needle, way) >= -cams.presserFlat - cams.presserRamp

/** How many stitches a float passes behind. */
export const floatLength = (float: Float): number => float.last - float.first + 1

/** Every float of a row, from the left, the first yarn's before the second's. */
export const floats = (row: readonly Stitch[]): Float[] =>
  yarns.flatMap((yarn) => {
    const own = row.flatMap((stitch, index) => (stitch === yarn ? [index] : []))
    return own.slice(1).flatMap((index, n): Float[] => {
      const before = at(own, n)
      return index - before > 1
        ? [{ yarn, first: needleAtSlot(before + 1, row.length), last: needleAtSlot(index - 1, row.length) }]
        : []
    })
  })

/** The floats of a row that pass behind more stitches than a limit; without one, than is good practice. */
export const longFloats = (row: readonly Stitch[], limit: number = floatLimit): Float[] =>
  floats(row).filter((float) => floatLength(float) > limit)

/** The longest float of some rows; null where no yarn floats. */
export const longestFloat = (rows: readonly (readonly Stitch[])[]): Float | null =>
  rows
    .flatMap(floats)
    .reduce<Float | null>(
      (longest, float) => (longest && floatLength(longest) >= floatLength(float) ? longest : float),
      null,
    )
