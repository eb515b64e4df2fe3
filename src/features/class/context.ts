import type { Machine } from '../machine/main.ts'
import type { ClassState, ClassStore } from './state.ts'
import type { ClassStep } from './step.ts'
import type { Travel } from './carriage-travel.ts'
import type { Lesson } from './class-lesson.ts'

/** What the parts of a class view work with. */
export interface Room {
  /** The class's id. */
  readonly id: string
  readonly root: HTMLElement
  readonly machine: Machine
  readonly store: ClassStore
  readonly steps: readonly ClassStep[]
  readonly lesson: Lesson
  readonly travel: Travel
  /** Says something to the teacher, once; the next order takes it away. */
  readonly tell: (words: string) => void
}

/** Whether two states show the same text: the same step or question, before or after its answer. */
export const samePlace = (one: ClassState, other: ClassState): boolean =>
  one.step === other.step &&
  one.revealed === other.revealed &&
  one.quiz?.seed === other.quiz?.seed &&
  one.quiz?.question === other.quiz?.question
