import { type ChapterOutline, type ClassState, forward } from '../class/index.ts'

/** What the next press brings. `titles` are those of the chapter's steps. Throws where a step has no title. */
export const upcomingWords = (
  state: ClassState,
  outline: ChapterOutline,
  titles: readonly string[],
): string => {
  if (state.blank || state.qr) return 'uncovers the screen'
  const next = forward(state, outline, 1)
  if (!next) return 'nothing: this is the end of the chapter'
  if (next.quiz)
    return next.revealed ? 'reveals the answer' : `question ${next.quiz.question + 1} of the class quiz`
  if (next.step !== state.step) {
    const title = titles[next.step]
    if (title === undefined) throw new Error(`step ${next.step} has no title`)
    return `“${title}”`
  }
  return next.revealed && !state.revealed ? 'reveals the answer' : 'the rest of the text'
}
