import { dimensions } from './dimensions.ts'
import { type Fault, type FaultOf, isStripFault } from './fault.ts'
import { allStrips, type Strip } from './indices.ts'

/** Whether a strip can't move, so that its oil makes no difference. */
const isFast = (faults: readonly Fault[], strip: Strip): boolean =>
  faults.some((fault) => isStripFault(fault) && !isSlow(fault) && fault.at[0] === strip)

type Slow = FaultOf<'strip.slow'>

const isSlow = (fault: Fault): fault is Slow => fault.kind === 'strip.slow'

/**
 * How thick the oil is on every strip that can move, as the time constant of a strip's return in ms: that of the
 * quickest. Fresh oil where no strip moves.
 */
export const oilOf = (faults: readonly Fault[]): number => {
  const free = allStrips.filter((strip) => !isFast(faults, strip))
  const slowness = (strip: Strip): number =>
    faults.filter(isSlow).find((fault) => fault.at[0] === strip)?.amount ?? dimensions.stripReturn
  return free.length === 0 ? dimensions.stripReturn : Math.min(...free.map(slowness))
}

/** The faults with the same oil, in ms, on every strip that can move; fresh oil is no fault. */
export const withOil = (faults: readonly Fault[], ms: number): Fault[] => {
  const others = faults.filter((fault) => !isSlow(fault))
  if (ms <= dimensions.stripReturn) return others
  const slow = allStrips
    .filter((strip) => !isFast(faults, strip))
    .map((strip): Slow => ({ kind: 'strip.slow', at: [strip], amount: ms }))
  return [...others, ...slow]
}

/** The slow strips that have their oil in common, where it is on every strip that can move; none otherwise. */
export const sharedOil = (faults: readonly Fault[]): Fault[] => {
  const ms = oilOf(faults)
  const slow = faults.filter((fault) => isSlow(fault) && fault.amount === ms)
  const free = allStrips.filter((strip) => !isFast(faults, strip))
  return slow.length > 1 && slow.length === free.length ? slow : []
}
