import type { Fault } from '../../mechanism/fault.ts'
import type { Kit, Picture, Order, Step } from '../question.ts'
import { type Scene, textOf } from '../scene.ts'

const most = 5

/** What a maker says of an order. */
export interface Sequence {
  readonly prompt: string
  readonly scene: Scene
  readonly pictures?: readonly Picture[]
  /** In their right order. */
  readonly steps: readonly Step[]
  /** Why it is so, as a sentence. */
  readonly because: string
  /** Where the right order can be seen. */
  readonly show: Scene
}

/** Offers some of the steps, never in their right order. */
export const shuffledOrder = ({ draw, library }: Kit, sequence: Sequence): Order => {
  const steps = draw.some(sequence.steps, Math.min(most, sequence.steps.length))
  const ids = steps.map(({ id }) => id)
  const offered = draw.shuffled(ids)
  if (offered.join() === ids.join()) offered.reverse()
  return {
    kind: 'order',
    prompt: sequence.prompt,
    state: textOf(library, sequence.scene),
    pictures: sequence.pictures ?? [],
    steps,
    offered,
    right: { reason: sequence.because, show: textOf(library, sequence.show) },
  }
}

/** Label, why it comes where it does, and the fault that leaves it out. */
export type Told = readonly [id: string, label: string, why: string, without?: Fault]

export const stepsOf = ({ library }: Kit, scene: Scene, told: readonly Told[]): Step[] =>
  told.map(([id, label, why, without]) => ({
    id,
    label,
    why,
    show: textOf(library, without ? { ...scene, faults: [without] } : scene),
  }))
