import { at } from '../mechanism/lookup.ts'
import type { CardPlace } from '../mechanism/bed.ts'
import type { CardLibrary } from '../link/state.ts'
import { makeQuestion, chapterOfMaker } from './make-question.ts'
import { makers as first } from './chapters/chapter-1.ts'
import { makers as second } from './chapters/chapter-2.ts'
import { makers as third } from './chapters/chapter-3.ts'
import { makers as fourth } from './chapters/chapter-4.ts'
import { makers as fifth } from './chapters/chapter-5.ts'
import { makers as sixth } from './chapters/chapter-6.ts'
import { makers as seventh } from './chapters/chapter-7.ts'
import { makers as eighth } from './chapters/chapter-8.ts'
import { makers as ninth } from './chapters/chapter-9.ts'
import { makers as tenth } from './chapters/chapter-10.ts'
import type { Makers, Question } from './question.ts'

/** Every chapter's makers, chapter 1 first. A page loads only its own chapter's (`src/browser/load-questions.ts`); this list is for the build and the tests. */
const chapters: readonly Makers[] = [
  first,
  second,
  third,
  fourth,
  fifth,
  sixth,
  seventh,
  eighth,
  ninth,
  tenth,
]

/** The ids of a chapter's makers, in the order in which they are asked. */
export const makersOf = (chapter: number): string[] =>
  Object.keys(at(chapters, chapter - 1)).map((name) => `${chapter}.${name}`)

/** Makes a maker's question for a seed; null where no maker has this id. */
export const questionOf = (
  maker: string,
  seed: number,
  library: CardLibrary,
  place?: CardPlace,
): Question | null => {
  const makers = chapters[chapterOfMaker(maker) - 1]
  return makers ? makeQuestion(makers, maker, seed, library, place) : null
}
