import type { Machine } from '../machine/index.ts'
import type { CarriageTravel } from './carriage-travel.ts'
import type { ChapterOutline } from './shared/position.ts'
import type { ClassStore } from './shared/state.ts'
import type { ClassStep } from './shared/step.ts'

/** What the parts of a class view work with. */
export interface ClassView {
  /** The class's id. */
  readonly id: string
  readonly root: HTMLElement
  readonly machine: Machine
  readonly store: ClassStore
  readonly steps: readonly ClassStep[]
  readonly outline: ChapterOutline
  readonly travel: CarriageTravel
  /** Shows a message to the teacher until the next command. */
  readonly notify: (words: string) => void
}
