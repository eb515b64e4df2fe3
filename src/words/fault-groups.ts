import type { Fault } from '../mechanism/fault.ts'
import { sharedOil } from '../mechanism/oil.ts'
import { amountText, faultPhrase } from './faults.ts'

/** Faults that one phrase names together. */
export interface FaultGroup {
  readonly phrase: string
  readonly faults: readonly Fault[]
}

/** Every fault with its phrase; the same thick oil on every strip is named once. */
export const faultGroups = (faults: readonly Fault[]): FaultGroup[] => {
  const oil = sharedOil(faults)
  const [first] = oil
  const singles = faults
    .filter((fault) => !oil.includes(fault))
    .map((fault) => ({ phrase: faultPhrase(fault), faults: [fault] }))
  return first
    ? [
        ...singles,
        { phrase: `Thick oil on the strips, ${amountText(first.kind, first.amount ?? 0)}`, faults: oil },
      ]
    : singles
}
