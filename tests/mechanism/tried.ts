import type { Fault } from '@/mechanism/fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { tryMachines, type Trials } from '@/mechanism/trials.ts'

/** A machine of this wear with a card of all holes. */
export const worn = (wear: number, faults: readonly Fault[] = [], speed = 500) =>
  startRun({ ...soundScenario([0xffffff]), wear, faults, speed })

/** What so many machines came to, tried out one by one. */
export const tried = (run: ReturnType<typeof worn>, way: 1 | -1, machines: number): Trials => {
  for (const trials of tryMachines(run, way)) if (trials.machines === machines) return trials
  throw new Error('the trials ended')
}
