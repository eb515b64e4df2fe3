import { slowChances, wearChances } from './chances.ts'
import { type Lastings, sufficientChances } from './peaks.ts'
import { caseAlways, caseSuffices, caseWeak, firstLasting } from './slow-entries.ts'

/** How many cases a column of a slow strip has. */
export const caseCount = ({ cases }: Lastings): number => cases.length + firstLasting

const casesOf = (lastings: Lastings, wear: number, slow: number): Float64Array => {
  const lasting = lastings.chances[wear]![slow]!
  const all = new Float64Array(caseCount(lastings))
  all[caseAlways] = 1
  all[caseSuffices] = sufficientChances()[wear]!
  all[caseWeak] = 1 - all[caseSuffices]
  all.set(lasting, firstLasting)
  return all
}

const known = new WeakMap<Lastings, readonly (readonly Float64Array[])[]>()

/** By wear and slowness, in the order of their tables: the chance of each case of a column of a slow strip. */
export const caseChancesOf = (lastings: Lastings): readonly (readonly Float64Array[])[] => {
  let found = known.get(lastings)
  if (!found) {
    found = wearChances.map((_, wear) => slowChances.map((__, slow) => casesOf(lastings, wear, slow)))
    known.set(lastings, found)
  }
  return found
}

/** Calls back for each combination of cases of three columns that is possible, with its place in a list and its chance. */
export const eachCombination = (
  chances: Float64Array,
  each: (place: number, chance: number) => void,
): void => {
  const size = chances.length
  for (let a = 0; a < size; a++) {
    if (chances[a] === 0) continue
    for (let b = 0; b < size; b++) {
      const both = chances[a]! * chances[b]!
      if (both === 0) continue
      const from = (a * size + b) * size
      for (let c = 0; c < size; c++) if (chances[c] !== 0) each(from + c, both * chances[c]!)
    }
  }
}
