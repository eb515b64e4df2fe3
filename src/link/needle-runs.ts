import { needleIndex, needleName } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { toNeedle } from '../mechanism/indices.ts'

/** Needles one step apart, by their numbers, both ends included. */
export interface NeedleRun {
  readonly first: number
  readonly last: number
  readonly step: number
}

/** The steps that a bed's faults go by: neighbours, one strip's needles, one column's. */
const steps = [1, dimensions.strips, dimensions.columns] as const

/** The fewest needles that are written as a run. */
const shortest = 3

/** Writes a run: `R3`, `R3-R9`, `L97-R96x8`. */
const writeRun = ({ first, last, step }: NeedleRun): string => {
  if (first === last) return needleName(toNeedle(first))
  return `${needleName(toNeedle(first))}-${needleName(toNeedle(last))}${step === 1 ? '' : `x${step}`}`
}

/** Reads what `writeRun` writes; null where it is none, or where a bed of so many needles lacks one. */
export const readRun = (text: string, needles: number = dimensions.needles): NeedleRun | null => {
  const match = /^([LR]\d{1,3})(?:-([LR]\d{1,3})(?:x(\d{1,3}))?)?$/.exec(text)
  if (!match) return null
  const first = needleIndex(match[1]!, needles)
  const last = match[2] === undefined ? first : needleIndex(match[2], needles)
  const step = Number(match[3] ?? 1)
  return first === null || last === null || last < first || step < 1 ? null : { first, last, step }
}

/** The needles of a run, from the left. */
export const needlesOf = ({ first, last, step }: NeedleRun): number[] =>
  Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, n) => first + n * step)

const runFrom = (first: number, step: number, left: ReadonlySet<number>): NeedleRun => {
  let last = first
  while (left.has(last + step)) last += step
  return { first, last, step }
}

/** Takes needles apart into as few runs as going from the left finds, and writes them with `_` between. */
export const writeNeedles = (needles: readonly number[]): string => {
  const left = new Set([...needles].sort((one, other) => one - other))
  const words: string[] = []
  for (const first of left) {
    const [longest = { first, last: first, step: 1 }] = steps
      .map((step) => runFrom(first, step, left))
      .sort((one, other) => needlesOf(other).length - needlesOf(one).length)
    const run = needlesOf(longest).length < shortest ? { first, last: first, step: 1 } : longest
    for (const needle of needlesOf(run)) left.delete(needle)
    words.push(writeRun(run))
  }
  return words.join('_')
}
