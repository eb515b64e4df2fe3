import { slide, type Slide } from '../../mechanism/turn.ts'
import type { FaultOf } from '../../mechanism/fault.ts'
import { withFault } from '../../mechanism/fault-list.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

/**
 * Slides the carriage to `x` needles as a hand would: beyond the turn mark the next pass begins, and going back over
 * the last needle short of the mark is a short turn, which stays in the state as the fault that it is.
 */
export const slideTo = (store: MachineStore, x: number): Slide => {
  const { state } = store.now()
  const step = slide(state, Math.round(x * 100) / 100, state.bed)
  const short: FaultOf<'turn.short'> = { kind: 'turn.short', at: [step.pass], amount: null }
  store.set({
    pass: step.pass,
    at: step.at,
    ...(step.turned === 'short' ? { faults: withFault(state.faults, short) } : {}),
  })
  return step
}
