import type { ClassState } from '../class/state.ts'
import { forward, type Lesson } from '../class/navigation.ts'

/** What the next press brings. */
export const nextWords = (state: ClassState, lesson: Lesson, titles: readonly string[]): string => {
  if (state.blank || state.qr) return 'uncovers the screen'
  const to = forward(state, lesson, 1)
  if (!to) return 'nothing: this is the end of the chapter'
  if (to.quiz)
    return to.revealed ? 'reveals the answer' : `question ${to.quiz.question + 1} of the class quiz`
  if (to.step !== state.step) return `“${titles[to.step] ?? ''}”`
  return to.revealed && !state.revealed ? 'reveals the answer' : 'the rest of the text'
}
