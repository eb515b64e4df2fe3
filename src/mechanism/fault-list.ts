import { type Fault, faultId } from './fault.ts'
import { faultKinds } from './fault-kinds.ts'
import { sortedByIds } from './part.ts'

/** Whether two faults can't both be so: the same part in two states, or one number given twice. */
export const contradict = (one: Fault, other: Fault): boolean => {
  const first = faultKinds[one.kind].excludes
  const second = faultKinds[other.kind].excludes
  const shared = first.some((group) => second.includes(group))
  const mine: readonly number[] = one.at
  const its: readonly number[] = other.at
  return shared && mine.length === its.length && mine.every((index, n) => index === its[n])
}

/** Faults in the order of their ids, numbers by their value: how every list of faults is sorted. */
export const sortedFaults = (faults: readonly Fault[]): Fault[] => sortedByIds(faults, faultId)

/** The faults with one more at their end; what can't be there beside it goes. */
export const withLast = (faults: readonly Fault[], fault: Fault): Fault[] => [
  ...faults.filter((other) => !contradict(other, fault) && faultId(other) !== faultId(fault)),
  fault,
]

/** The faults with one more, sorted; what can't be there beside it goes. */
export const withFault = (faults: readonly Fault[], fault: Fault): Fault[] =>
  sortedFaults(withLast(faults, fault))

/** What is said of two faults that can't both be so, by their names. */
export const contradictionWords = (earlier: string, later: string): string =>
  `${earlier} and ${later} can't both be so; the later, ${later}, counts.`
