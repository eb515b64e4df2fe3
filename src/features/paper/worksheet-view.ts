import { rightOption, rightVerdict } from '../../lesson/marking.ts'
import type { Body, Needle } from '../../lesson/question.ts'
import type { Task } from '../../lesson/worksheet.ts'
import { at } from '../../mechanism/lookup.ts'
import { needleName } from '../../mechanism/bed.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { listed } from '../../words/lists.ts'
import type { Paper } from '../../drawings/shared/elements.ts'
import { inEights, needleSpan, pictureOf } from '../../drawings/question/pictures.ts'

/** A bed with a box to mark for each needle; marked already on the sheet of answers. */
const boxes = (paper: Paper, needles: readonly Needle[], isAnswer: boolean): HTMLElement => {
  const places = needles.map(({ index, right }) =>
    paper.html('span', { class: 'mark-place' }, [
      paper.html('span', { class: 'mark-box' }, [isAnswer && right ? '✕' : '']),
      ...(isAnswer ? [] : [paper.html('span', { class: 'mark-name' }, [needleName(toNeedle(index))])]),
    ]),
  )
  return paper.html(
    'div',
    { class: `eights mark-boxes${isAnswer ? ' marked' : ''}`, 'aria-hidden': 'true' },
    inEights(paper, places, needleSpan(at(needles, 0).index)),
  )
}

const line = (paper: Paper, words: string): HTMLElement =>
  paper.html('p', { class: 'task-line' }, [words, paper.html('span', { class: 'blank' })])

/** Space for the answer. */
const answerSpace = (paper: Paper, task: Task): HTMLElement[] => {
  const { question } = task
  switch (question.kind) {
    case 'needles':
      return [...(task.kind === 'hole' ? [line(paper, 'Strip')] : []), boxes(paper, question.needles, false)]
    case 'number':
      return [line(paper, 'Answer')]
    case 'part':
    case 'check':
      return [
        paper.html(
          'ul',
          { class: 'task-options' },
          question.options.map(({ label }) => paper.html('li', {}, [label])),
        ),
      ]
    case 'order':
      return []
  }
}

const answerWords = (question: Body): string => {
  switch (question.kind) {
    case 'needles': {
      const names = question.needles
        .filter(({ right }) => right)
        .map(({ index }) => needleName(toNeedle(index)))
      return listed(names) || 'None'
    }
    case 'part':
    case 'check':
      return rightOption(question).label
    case 'order':
      return listed(question.steps.map(({ label }) => label))
    case 'number':
      return String(question.value)
  }
}

/** The right answer, and why it is so. */
export const answerOf = (question: Body): { answer: string; reason: string } => ({
  answer: answerWords(question),
  reason: rightVerdict(question).reason,
})

/** The answer and its reason in a line, the answer once. */
const answerLine = (paper: Paper, question: Body): (Node | string)[] => {
  const { answer, reason } = answerOf(question)
  const strong = paper.html('strong', {}, [answer])
  return reason.startsWith(`${answer}: `) ? [strong, reason.slice(answer.length)] : [strong, `. ${reason}`]
}

/** The tasks as the list items of a worksheet. */
export const tasksView = (paper: Paper, tasks: readonly Task[]): HTMLElement[] =>
  tasks.map((task) =>
    paper.html('li', { class: 'task', 'data-kind': task.kind }, [
      paper.html('p', { class: 'prompt' }, [task.question.prompt]),
      ...task.question.pictures.map((picture) => pictureOf(paper, picture)),
      ...answerSpace(paper, task),
    ]),
  )

/** The answers as the list items of their sheet; `machine` is the address that a link's text is put behind. */
export const answersView = (paper: Paper, tasks: readonly Task[], machine: string): HTMLElement[] =>
  tasks.map(({ question }) =>
    paper.html('li', { class: 'answer' }, [
      ...(question.kind === 'needles' ? [boxes(paper, question.needles, true)] : []),
      paper.html('p', {}, [
        ...answerLine(paper, question),
        ' ',
        paper.html('a', { class: 'answer-show', href: `${machine}#${rightVerdict(question).show}` }, [
          'On the machine',
        ]),
      ]),
    ]),
  )
