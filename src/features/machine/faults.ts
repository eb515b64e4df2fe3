import { contradict, type Fault, faultId } from '../../mechanism/fault.ts'

/** The state's faults with one more; what can't stand beside it goes. */
export const withFault = (faults: readonly Fault[], fault: Fault): Fault[] => [
  ...faults.filter((other) => !contradict(other, fault) && faultId(other) !== faultId(fault)),
  fault,
]
