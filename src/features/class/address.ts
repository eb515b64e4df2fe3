import type { ClassState, QuizPlace } from './state.ts'

/** What of a class view stands in the query beside the class's id. */
export type Addressed = Pick<ClassState, 'step' | 'revealed' | 'quiz'>

/** Reads `SEED.N`, where questions count from 1; undefined where it is no question of this quiz. */
const readQuiz = (text: string, questions: number): QuizPlace | undefined => {
  const [, seed, number] = /^(\d{1,9})\.(\d{1,3})$/.exec(text) ?? []
  const question = Number(number) - 1
  return question >= 0 && question < questions ? { seed: Number(seed), question } : undefined
}

/** What a query asks for; the first step where it names none that there is. */
export const readAddress = (search: string, ids: readonly string[], questions: number): Addressed => {
  const query = new URLSearchParams(search)
  const quiz = readQuiz(query.get('quiz') ?? '', questions)
  const step = quiz ? ids.length - 1 : Math.max(0, ids.indexOf(query.get('step') ?? ''))
  return { step, quiz, revealed: query.has('shown') }
}

/** The same address for what is shown now. */
export const writeAddress = (
  href: string,
  { step, revealed, quiz }: Addressed,
  ids: readonly string[],
): string => {
  const url = new URL(href)
  const { searchParams: query } = url
  if (quiz) query.set('quiz', `${quiz.seed}.${quiz.question + 1}`)
  else query.delete('quiz')
  if (quiz) query.delete('step')
  else query.set('step', ids[step] ?? '')
  if (revealed) query.set('shown', '')
  else query.delete('shown')
  return url.href
}
