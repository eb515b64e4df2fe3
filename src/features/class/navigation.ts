import type { ClassState } from './state.ts'
import { type Lesson, waits } from './class-lesson.ts'

export { type Lesson, waits } from './class-lesson.ts'

/** A change of what is shown. The machine's state goes with it: an empty link stands for what belongs there. */
export type Move = Pick<ClassState, 'step' | 'part' | 'parts' | 'revealed' | 'quiz' | 'link'>

/** A part past the last: the class's screen makes the last of it. */
const lastPart = 999

const at = (place: Partial<Move>, state: ClassState): Move => ({
  step: state.step,
  part: 0,
  parts: 1,
  revealed: false,
  quiz: undefined,
  link: '',
  ...place,
})

/** Shows the answer that the class was asked for; undefined where there is none to show. */
export const reveal = (state: ClassState, lesson: Lesson): Move | undefined =>
  waits(state, lesson) ? at({ revealed: true, quiz: state.quiz }, state) : undefined

/** A step, from its beginning; the nearest where there is none of that number. */
export const toStep = (state: ClassState, { asks }: Lesson, step: number): Move =>
  at({ step: Math.max(0, Math.min(asks.length - 1, step)) }, state)

/** A question of the class quiz, its answer not yet shown. */
export const toQuestion = (state: ClassState, seed: number, question: number): Move =>
  at({ quiz: { seed, question } }, state)

/**
 * What comes next: the next part of the text, then the answer, then the next step, then the questions, drawn from
 * `seed`. Undefined at the end.
 */
export const forward = (state: ClassState, lesson: Lesson, seed: number): Move | undefined => {
  const { step, part, parts, quiz, revealed, link } = state
  if (part < parts - 1) return { step, part: part + 1, parts, revealed, quiz, link }
  const answer = reveal(state, lesson)
  if (answer) return answer
  if (quiz)
    return quiz.question + 1 < lesson.questions ? toQuestion(state, quiz.seed, quiz.question + 1) : undefined
  if (step + 1 < lesson.asks.length) return toStep(state, lesson, step + 1)
  return lesson.questions > 0 ? toQuestion(state, seed, 0) : undefined
}

/** What came before: the same way back, each step as it was left. Undefined at the beginning. */
export const back = (state: ClassState, { asks }: Lesson): Move | undefined => {
  const { step, parts, quiz, revealed, link } = state
  const part = Math.min(state.part, parts - 1)
  if (part > 0) return { step, part: part - 1, parts, revealed, quiz, link }
  if (revealed && (quiz || asks[step])) return at({ quiz, part: lastPart }, state)
  if (quiz && quiz.question > 0)
    return at({ quiz: { ...quiz, question: quiz.question - 1 }, revealed: true, part: lastPart }, state)
  const before = quiz ? asks.length - 1 : step - 1
  if (before < 0) return undefined
  return at({ step: before, revealed: asks[before] === true, part: lastPart }, state)
}
