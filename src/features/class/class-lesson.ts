import type { ClassState } from './state.ts'

/** What a chapter has to walk through. */
export interface Lesson {
  /** For each step, whether it asks for a prediction. */
  readonly asks: readonly boolean[]
  /** How many questions the class quiz has. */
  readonly questions: number
}

/** Whether what is shown waits for the class. */
export const waits = (state: ClassState, { asks }: Lesson): boolean =>
  !state.revealed && (state.quiz !== undefined || asks[state.step] === true)
