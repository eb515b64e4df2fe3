import type { Lesson } from './class-lesson.ts'
import type { ClassState } from './state.ts'

/** Where the class is: step 4 of 11, and which part of its text, where that takes more than one screen. */
export const placeWords = ({ quiz, step, part, parts }: ClassState, { asks, questions }: Lesson): string => {
  const what = quiz ? `Question ${quiz.question + 1} of ${questions}` : `Step ${step + 1} of ${asks.length}`
  return parts > 1 ? `${what}, part ${Math.min(part, parts - 1) + 1} of ${parts}` : what
}
