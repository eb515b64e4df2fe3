import { awaitsAnswer, type ChapterOutline } from './position.ts'
import type { ClassState } from './state.ts'

/** A change of what is shown. An empty link means the machine's state that belongs there. */
export type Move = Pick<ClassState, 'step' | 'part' | 'parts' | 'revealed' | 'quiz' | 'link'>

/** A part past the last: the class's screen shows the last. */
const lastPart = 999

const moveTo = (position: Partial<Move>, state: ClassState): Move => ({
  step: state.step,
  part: 0,
  parts: 1,
  revealed: false,
  quiz: undefined,
  link: '',
  ...position,
})

/** Shows the answer that the class was asked for; undefined where there is none to show. */
export const reveal = (state: ClassState, outline: ChapterOutline): Move | undefined =>
  awaitsAnswer(state, outline) ? moveTo({ revealed: true, quiz: state.quiz }, state) : undefined

/** A step, from its beginning; the nearest where there is none of that number. */
export const toStep = (state: ClassState, { asks }: ChapterOutline, step: number): Move =>
  moveTo({ step: Math.max(0, Math.min(asks.length - 1, step)) }, state)

/** A question of the class quiz, its answer not yet shown. */
export const toQuestion = (state: ClassState, seed: number, question: number): Move =>
  moveTo({ quiz: { seed, question } }, state)

/**
 * What comes next: the next part of the text, then the answer, then the next step, then the questions, made from
 * `seed`. Undefined at the end.
 */
export const forward = (state: ClassState, outline: ChapterOutline, seed: number): Move | undefined => {
  const { step, part, parts, quiz, revealed, link } = state
  if (part < parts - 1) return { step, part: part + 1, parts, revealed, quiz, link }
  const answer = reveal(state, outline)
  if (answer) return answer
  if (quiz)
    return quiz.question + 1 < outline.questions ? toQuestion(state, quiz.seed, quiz.question + 1) : undefined
  if (step + 1 < outline.asks.length) return toStep(state, outline, step + 1)
  return outline.questions > 0 ? toQuestion(state, seed, 0) : undefined
}

/** What came before: the same way back, each step as it was left. Undefined at the beginning. */
export const back = (state: ClassState, { asks }: ChapterOutline): Move | undefined => {
  const { step, parts, quiz, revealed, link } = state
  const part = Math.min(state.part, parts - 1)
  if (part > 0) return { step, part: part - 1, parts, revealed, quiz, link }
  if (revealed && (quiz || asks[step])) return moveTo({ quiz, part: lastPart }, state)
  if (quiz && quiz.question > 0)
    return moveTo({ quiz: { ...quiz, question: quiz.question - 1 }, revealed: true, part: lastPart }, state)
  const before = quiz ? asks.length - 1 : step - 1
  if (before < 0) return undefined
  return moveTo({ step: before, revealed: asks[before] === true, part: lastPart }, state)
}
