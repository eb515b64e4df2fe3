import { makersOf, questionOf } from '../lesson/chapters.ts'
import { siteLibrary } from './cards.ts'
import { emptyDocument } from './drawn-markup.ts'
import { foldedQuestion } from '../drawings/question/folded.ts'
import { paperOf } from '../drawings/shared/elements.ts'

/** A chapter's questions as markup, their answers folded away. Throws where the chapter has none. */
export const foldedQuestions = (chapter: number): string[] => {
  const paper = paperOf(emptyDocument())
  const questions = makersOf(chapter).map((maker) => {
    const question = questionOf(maker, 1, siteLibrary)
    if (!question) throw new Error(`chapter ${chapter} has no questions of ${maker}`)
    return foldedQuestion(paper, question).outerHTML
  })
  if (questions.length === 0) throw new Error(`there are no questions for a chapter ${chapter}`)
  return questions
}
