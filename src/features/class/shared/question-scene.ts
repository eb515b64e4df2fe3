import { makeQuestion } from '../../../lesson/make-question.ts'
import { rightAnswer, rightVerdict } from '../../../lesson/marking.ts'
import type { Question } from '../../../lesson/question.ts'
import { read } from '../../../link/read.ts'
import type { CardLibrary } from '../../../link/state.ts'
import { type CardPlace, needleName } from '../../../mechanism/bed.ts'
import { toNeedle } from '../../../mechanism/indices.ts'
import { listed, withUnit } from '../../../words/lists.ts'
import { element } from '../../../browser/dom.ts'
import { offeredWords, optionWords } from '../../../drawings/question/choices.ts'
import { loadMakers } from '../../../browser/load-questions.ts'
import { paperOf } from '../../../drawings/shared/elements.ts'
import { pictureOf } from '../../../drawings/question/pictures.ts'
import type { QuizPosition } from './state.ts'
import type { ClassScene } from './step.ts'

/** An answer that a class can call out by its letter. */
interface Option {
  readonly words: string
  readonly right: boolean
}

/** The answers on offer, in the order of their letters; none where the class says needles. */
const optionsOf = (question: Question): Option[] => {
  switch (question.kind) {
    case 'needles':
      return []
    case 'part':
    case 'check':
      return question.options.map((option) => ({ words: optionWords(option), right: option.right }))
    case 'order':
      return offeredWords(question).map((words) => ({ words, right: false }))
    case 'number': {
      const values = [...new Set([question.value, ...question.slips.map(({ value }) => value)])]
      values.sort((a, b) => a - b)
      return values.map((value) => ({
        words: question.unit === '' ? String(value) : withUnit(value, question.unit),
        right: value === question.value,
      }))
    }
  }
}

/** A list whose items keep their letters; `letter` counts from 0. */
const lettered = (items: readonly { readonly words: string; readonly letter: number }[]): HTMLElement =>
  element(
    'ol',
    { class: 'letters' },
    items.map(({ words, letter }) => element('li', { value: String(letter + 1) }, [words])),
  )

/** The right answer, by its letters where it has any. */
const answerOf = (question: Question): HTMLElement => {
  const options = optionsOf(question).map((option, letter) => ({ ...option, letter }))
  switch (question.kind) {
    case 'needles': {
      const names = rightAnswer(question).map((needle) => needleName(toNeedle(needle)))
      return element('p', { class: 'class-answer' }, [names.length === 0 ? 'None.' : `${listed(names)}.`])
    }
    case 'order':
      return lettered(question.steps.flatMap(({ label }) => options.filter(({ words }) => words === label)))
    case 'part':
    case 'check':
    case 'number':
      return lettered(options.filter(({ right }) => right))
  }
}

/** Writes a question into `place`: the question large, or its answer with the machine's state that proves it. */
const sceneOf = (
  place: HTMLElement,
  question: Question,
  library: CardLibrary,
  revealed: boolean,
): ClassScene => {
  const { reason, show } = rightVerdict(question)
  const { state } = read(revealed ? show : question.state, library)
  const paper = paperOf(document)
  const prompt = element('p', { class: 'class-prompt' }, [question.prompt])
  const options = optionsOf(question)
  const pieces = revealed
    ? [prompt, answerOf(question), element('p', {}, [reason])]
    : [
        prompt,
        ...question.pictures.map((picture) => pictureOf(paper, picture)),
        ...(options.length > 1 ? [lettered(options.map((option, letter) => ({ ...option, letter })))] : []),
      ]
  place.replaceChildren(...pieces)
  // A list too long for the screen continues in the next part, with its letters.
  const lists = pieces.filter((piece) => piece.matches('.letters'))
  return {
    state,
    to: state.at,
    figure: 'chain',
    scene: {},
    pieces: pieces.flatMap((piece) =>
      lists.includes(piece) ? ([...piece.children] as HTMLElement[]) : [piece],
    ),
    holders: lists,
  }
}

/** Writes one of a chapter's questions into `place`; undefined where the chapter has no such question. */
export const questionScene = async (
  place: HTMLElement,
  chapter: number,
  { seed, question: n }: QuizPosition,
  library: CardLibrary,
  revealed: boolean,
  cardPlace: CardPlace,
): Promise<ClassScene | undefined> => {
  const makers = await loadMakers(chapter)
  const name = Object.keys(makers)[n]
  const question =
    name === undefined ? null : makeQuestion(makers, `${chapter}.${name}`, seed, library, cardPlace)
  return question ? sceneOf(place, question, library, revealed) : undefined
}
