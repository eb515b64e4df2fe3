import { drawMarkedMachine, type MarkedPart } from '../../drawings/marked-machine/marked-machine.ts'
import type { Shape } from '../../drawings/shared/figure-contract.ts'
import { frameAt } from '../../mechanism/frame.ts'
import { startRun } from '../../mechanism/pass.ts'
import type { Scenario } from '../../mechanism/scenario.ts'

/** What a picture of the machine shows: the machine, and the parts that are ringed on it. */
export interface MachineShown {
  readonly scenario: Scenario
  /** Where the carriage is, as the model counts. */
  readonly at: number
  readonly marked: readonly MarkedPart[]
  readonly shape: Shape
  readonly isSmall: boolean
  readonly prefix: string
}

/** Draws the machine with its marks. The figure is heavy: import this file when it is needed, not before. */
export const drawMachine = (svg: SVGSVGElement, { scenario, at, ...options }: MachineShown): void => {
  const run = startRun(scenario)
  drawMarkedMachine(svg, run, frameAt(run, 1, at), options)
}
