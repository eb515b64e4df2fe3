import { makersOf, questionOf } from '@/lesson/chapters.ts'
import type { Question } from '@/lesson/question.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'

export const library = cardLibrary(cardsFolder)

export const chapters = Array.from({ length: 10 }, (_, n) => n + 1)

export const everyMaker = chapters.flatMap(makersOf)

/** A maker's question, which must be there. */
export const made = (maker: string, seed: number): Question => {
  const question = questionOf(maker, seed, library)
  if (!question) throw new Error(`no maker ${maker}`)
  return question
}
