import type { ClassState } from './state.ts'

/** What a class walks through in a chapter. */
export interface ChapterOutline {
  /** For each step, whether it asks for a prediction. */
  readonly asks: readonly boolean[]
  /** How many questions the class quiz has. */
  readonly questions: number
}

/** Whether the step or question that is shown has an answer that is still hidden. */
export const awaitsAnswer = (state: ClassState, { asks }: ChapterOutline): boolean =>
  !state.revealed && (state.quiz !== undefined || asks[state.step] === true)

/** Whether two states show the same text: the same step or question, before or after its answer. */
export const isSamePosition = (one: ClassState, other: ClassState): boolean =>
  one.step === other.step &&
  one.revealed === other.revealed &&
  one.quiz?.seed === other.quiz?.seed &&
  one.quiz?.question === other.quiz?.question

/** Where the class is: step 4 of 11, and which part of its text, where that takes more than one screen. */
export const positionWords = (
  { quiz, step, part, parts }: ClassState,
  { asks, questions }: ChapterOutline,
): string => {
  const what = quiz ? `Question ${quiz.question + 1} of ${questions}` : `Step ${step + 1} of ${asks.length}`
  return parts > 1 ? `${what}, part ${Math.min(part, parts - 1) + 1} of ${parts}` : what
}
