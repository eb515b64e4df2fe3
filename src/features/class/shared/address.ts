import { at } from '../../../mechanism/lookup.ts'
import { readStepName } from '../../../link/step-link.ts'
import { quote } from '../../../link/troubles.ts'
import type { ClassState, QuizPosition } from './state.ts'

/** What of a class's state is in its address's query, beside the class's id. */
export type AddressState = Pick<ClassState, 'step' | 'revealed' | 'quiz'>

/** Reads `SEED.N`, where questions count from 1; undefined where it is no question of this quiz. */
const readQuiz = (text: string, questions: number): QuizPosition | undefined => {
  const [, seed, number] = /^(\d{1,9})\.(\d{1,3})$/.exec(text) ?? []
  const question = Number(number) - 1
  return question >= 0 && question < questions ? { seed: Number(seed), question } : undefined
}

/** What came of reading a query, and a sentence where its step or question is none of the chapter's. */
export interface AddressReading extends AddressState {
  /** Null where there is nothing to say. */
  readonly trouble: string | null
}

/**
 * Reads a query; the first step where it names none of the chapter's. `former` has the names that steps had before, each
 * with the id of the step that took its place.
 */
export const readAddress = (
  search: string,
  ids: readonly string[],
  former: ReadonlyMap<string, string>,
  questions: number,
): AddressReading => {
  const query = new URLSearchParams(search)
  const asked = query.get('quiz')
  const quiz = readQuiz(asked ?? '', questions)
  const revealed = query.has('shown')
  if (quiz) return { step: ids.length - 1, quiz, revealed, trouble: null }
  const { step, trouble } = readStepName(query.get('step'), ids, former)
  const noQuestion =
    asked === null ? null : `This chapter's quiz has no question ${quote(asked)}; a step is shown.`
  return { step, quiz, revealed, trouble: noQuestion ?? trouble }
}

/** The address with its query changed to what is shown now. A step past the chapter's last, which another window may send, leaves its parameter empty. */
export const writeAddress = (
  href: string,
  { step, revealed, quiz }: AddressState,
  ids: readonly string[],
): string => {
  const url = new URL(href)
  const { searchParams: query } = url
  if (quiz) query.set('quiz', `${quiz.seed}.${quiz.question + 1}`)
  else query.delete('quiz')
  if (quiz) query.delete('step')
  else query.set('step', at(ids, step))
  if (revealed) query.set('shown', '')
  else query.delete('shown')
  return url.href
}
