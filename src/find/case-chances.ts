import { slowChances, wearChances } from './chances.ts'
import { keptFor } from './kept.ts'
import type { Lastings } from './lastings.ts'
import { caseAlways, caseSuffices, caseWeak, firstLasting } from './slow-entries.ts'

/** How many cases a column of a slow strip has. */
export const caseCount = ({ cases }: Lastings): number => cases.length + firstLasting

/** The cases that are possible, each with its chance. */
interface PossibleCases {
  readonly cases: Int32Array
  readonly chances: Float64Array
}

const possibleCases = (lastings: Lastings, wear: number, slow: number): PossibleCases => {
  const suffices = lastings.sufficient[wear]!
  const all = new Float64Array(caseCount(lastings))
  all[caseAlways] = 1
  all[caseSuffices] = suffices
  all[caseWeak] = 1 - suffices
  all.set(lastings.chances[wear]![slow]!, firstLasting)
  const cases = Int32Array.from(all.keys()).filter((n) => all[n] !== 0)
  return { cases, chances: Float64Array.from(cases, (n) => all[n]!) }
}

/** By wear and slowness, in the order of their tables: the possible cases of a column of a slow strip. */
export const casesOf = keptFor((lastings: Lastings): readonly (readonly PossibleCases[])[] =>
  wearChances.map((_, wear) => slowChances.map((__, slow) => possibleCases(lastings, wear, slow))),
)

/** What numbers by the cases of three columns, from `from` on in a list, come to; each column has a case by itself. */
export const meanOfCases = (
  { cases, chances }: PossibleCases,
  size: number,
  numbers: Float64Array,
  from: number,
): number => {
  const count = cases.length
  let total = 0
  for (let a = 0; a < count; a++)
    for (let b = 0; b < count; b++) {
      const row = from + (cases[a]! * size + cases[b]!) * size
      let sum = 0
      for (let c = 0; c < count; c++) sum += chances[c]! * numbers[row + cases[c]!]!
      total += chances[a]! * chances[b]! * sum
    }
  return total
}

/** Adds a weight to numbers by the cases of three columns, from `from` on in a list, shared by how likely each combination is. */
export const spreadOverCases = (
  { cases, chances }: PossibleCases,
  size: number,
  numbers: Float64Array,
  from: number,
  weight: number,
): void => {
  const count = cases.length
  for (let a = 0; a < count; a++)
    for (let b = 0; b < count; b++) {
      const row = from + (cases[a]! * size + cases[b]!) * size
      const both = weight * chances[a]! * chances[b]!
      for (let c = 0; c < count; c++) numbers[row + cases[c]!]! += both * chances[c]!
    }
}
