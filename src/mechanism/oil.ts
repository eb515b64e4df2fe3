import { type Fault, type FaultOf, isStripFault } from './fault.ts'
import { allStrips, type Strip } from './indices.ts'

/** Whether a strip can't move, so that its oil makes no difference. */
const isFast = (faults: readonly Fault[], strip: Strip): boolean =>
  faults.some((fault) => isStripFault(fault) && !isSlow(fault) && fault.at[0] === strip)

type Slow = FaultOf<'strip.slow'>

const isSlow = (fault: Fault): fault is Slow => fault.kind === 'strip.slow'

/**
 * How thick the oil is on every strip that can move, as the time constant of a strip's return in ms: that of the
 * quickest, and `fresh`, as with fresh oil, where no strip moves.
 */
export const oilOf = (faults: readonly Fault[], fresh: number): number => {
  const free = allStrips.filter((strip) => !isFast(faults, strip))
  const slowness = (strip: Strip): number =>
    faults.filter(isSlow).find((fault) => fault.at[0] === strip)?.amount ?? fresh
  return free.length === 0 ? fresh : Math.min(...free.map(slowness))
}

/** The faults with the same oil, in ms, on every strip that can move; fresh oil, up to `fresh` ms, is no fault. */
export const withOil = (faults: readonly Fault[], ms: number, fresh: number): Fault[] => {
  const others = faults.filter((fault) => !isSlow(fault))
  if (ms <= fresh) return others
  const slow = allStrips
    .filter((strip) => !isFast(faults, strip))
    .map((strip): Slow => ({ kind: 'strip.slow', at: [strip], amount: ms }))
  return [...others, ...slow]
}

/** The slow strips that have their oil in common, where it is on every strip that can move; none otherwise. */
export const sharedOil = (faults: readonly Fault[]): Fault[] => {
  const slow = faults.filter(isSlow)
  const free = allStrips.filter((strip) => !isFast(faults, strip))
  const isShared = slow.every(({ amount }) => amount === slow[0]?.amount)
  return slow.length > 1 && slow.length === free.length && isShared ? slow : []
}
