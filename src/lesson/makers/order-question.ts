import type { Fault } from '../../mechanism/fault.ts'
import type { Kit, Picture, Order, Step } from '../question.ts'
import { type Setup, linkText } from '../setup.ts'

const most = 5

/** What a maker gives for a question of order. */
export interface Sequence {
  readonly prompt: string
  readonly setup: Setup
  readonly pictures?: readonly Picture[]
  /** In their right order. */
  readonly steps: readonly Step[]
  /** Why it is so, as a sentence. */
  readonly because: string
  /** Where the right order can be seen. */
  readonly show: Setup
}

/** Offers some of the steps, never in their right order. */
export const orderQuestion = (kit: Kit, sequence: Sequence): Order => {
  const { random } = kit
  const steps = random.some(sequence.steps, Math.min(most, sequence.steps.length))
  const ids = steps.map(({ id }) => id)
  const offered = random.shuffled(ids)
  if (offered.join() === ids.join()) offered.reverse()
  return {
    kind: 'order',
    prompt: sequence.prompt,
    state: linkText(kit, sequence.setup),
    pictures: sequence.pictures ?? [],
    steps,
    offered,
    right: { reason: sequence.because, show: linkText(kit, sequence.show) },
  }
}

/** A step's id, its label, why it comes where it does, and the fault with which it does not happen. */
export type StepRow = readonly [id: string, label: string, why: string, without?: Fault]

export const stepsOf = (kit: Kit, setup: Setup, rows: readonly StepRow[]): Step[] =>
  rows.map(([id, label, why, without]) => ({
    id,
    label,
    why,
    show: linkText(kit, without ? { ...setup, faults: [without] } : setup),
  }))
