import { allNeedles } from '@/mechanism/indices.ts'
import type { Card } from '@/mechanism/card.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type Run, startRun } from '@/mechanism/pass.ts'
import { type Scenario, soundScenario } from '@/mechanism/scenario.ts'

/** A machine with this card and these faults, otherwise sound unless `more` says else. */
export const machine = (
  card: Card | null,
  faults: readonly string[] = [],
  more: Partial<Scenario> = {},
): Run => startRun({ ...soundScenario(card), faults: faults.map(faultOf), ...more })

/** Indexes of the selected needles of a pass. */
export const selectedIn = (run: Run, pass: number): number[] =>
  run.passOf(pass).came.flatMap((came, index) => (came === 'selected' ? [index] : []))

/** Indexes 0 to 199. */
export const everyNeedle = allNeedles

/** Whole numbers from `first` to `last`. */
export const count = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, n) => first + n)
