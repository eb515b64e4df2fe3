import { needleName } from '../../mechanism/bed.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { rightAnswer } from '../../lesson/marking.ts'
import type { Question } from '../../lesson/question.ts'
import { listed } from '../../words/lists.ts'
import type { Paper } from '../shared/elements.ts'
import { offeredWords, optionWords } from './choices.ts'
import { pictureOf } from './pictures.ts'

const list = (paper: Paper, tag: 'ul' | 'ol', items: readonly string[]): HTMLElement =>
  paper.html(
    tag,
    {},
    items.map((item) => paper.html('li', {}, [item])),
  )

/** What there is to choose from, as plain text. */
const choices = (paper: Paper, question: Question): HTMLElement[] => {
  if (question.kind === 'order') return [list(paper, 'ul', offeredWords(question))]
  return 'options' in question ? [list(paper, 'ul', question.options.map(optionWords))] : []
}

/** The answer, with what there is to say to the wrong ones. */
const answer = (paper: Paper, question: Question): HTMLElement[] => {
  const say = (text: string): HTMLElement => paper.html('p', {}, [text])
  switch (question.kind) {
    case 'needles': {
      const names = rightAnswer(question).map((needle) => needleName(toNeedle(needle)))
      // The reason names up to four itself.
      return [...(names.length > 4 ? [say(`${listed(names)}.`)] : []), say(question.right.reason)]
    }
    case 'order':
      return [
        list(
          paper,
          'ol',
          question.steps.map(({ label }) => label),
        ),
        say(question.right.reason),
      ]
    case 'number':
      return [
        say(question.right.reason),
        list(
          paper,
          'ul',
          question.slips.map(({ value, reason }) => `${value}? ${reason}`),
        ),
      ]
    case 'part':
    case 'check':
      return [
        say(`${question.options.find(({ right }) => right)?.label ?? ''}.`),
        list(
          paper,
          'ul',
          question.options.map(({ reason }) => reason),
        ),
      ]
  }
}

/** A question as it is in a page without scripts and on paper: its answer is folded away. */
export const foldedQuestion = (paper: Paper, question: Question): HTMLElement =>
  paper.html('li', { class: 'question' }, [
    paper.html('p', { class: 'prompt' }, [question.prompt]),
    ...question.pictures.map((picture) => pictureOf(paper, picture)),
    ...choices(paper, question),
    paper.html('details', {}, [paper.html('summary', {}, ['The answer']), ...answer(paper, question)]),
  ])
