import { mark, type Marking, rightAnswer } from '../../lesson/marking.ts'
import type { Kind, Question } from '../../lesson/question.ts'
import { choiceControl } from './choice-control.ts'
import type { Control } from './control.ts'
import { needlesControl } from './needles-control.ts'
import { numberControl } from './number-control.ts'
import { orderControl } from './order-control.ts'
import type { Paper } from '../../drawings/shared/elements.ts'
import { pictureOf } from '../../drawings/question/pictures.ts'

/** The line above a question, by its kind. */
const kindWords: Readonly<Record<Kind, string>> = {
  needles: 'Predict the needles',
  part: 'Name the fault',
  order: 'Put it in order',
  number: 'Give a number',
  check: 'Choose the next check; the minutes are rough',
}

const controls: { readonly [K in Kind]: (paper: Paper, question: Question<K>) => Control<K> } = {
  needles: needlesControl,
  part: choiceControl as (paper: Paper, question: Question<'part'>) => Control<'part'>,
  order: orderControl,
  number: numberControl,
  check: choiceControl as (paper: Paper, question: Question<'check'>) => Control<'check'>,
}

/** What a question's form calls on the page around it. */
export interface FormEvents {
  /** Shows a link's state on the machine; undefined where the page has no machine. */
  readonly show: ((state: string) => void) | undefined
  /** Called at the first marking of this question. */
  readonly marked: (right: boolean) => void
}

const button = (paper: Paper, words: string, act: () => void): HTMLElement => {
  const made = paper.html('button', { type: 'button' }, [words])
  made.addEventListener('click', act)
  return made
}

/** A question's form. `onwards` are the buttons that appear after its marking. */
export const questionForm = <K extends Kind>(
  paper: Paper,
  question: Question<K> & { readonly kind: K },
  events: FormEvents,
  onwards: readonly HTMLElement[],
): HTMLElement => {
  const control = controls[question.kind](paper, question)
  const verdict = paper.html('div', { class: 'verdict-words', role: 'status' })
  const after = paper.html('div', { class: 'quiz-buttons', hidden: '' }, onwards)
  const form = paper.html('form', { class: 'question', novalidate: '' })
  const { show } = events
  let isMarked = false
  let seen = question.state

  if (show)
    after.prepend(
      button(paper, 'Show it again', () => {
        show(seen)
      }),
    )
  const say = (lead: string, marking: Marking): void => {
    verdict.dataset.right = String(marking.right)
    verdict.replaceChildren(paper.html('p', {}, [paper.html('strong', {}, [lead]), ` ${marking.reason}`]))
    if (marking.wrong.length > 1)
      verdict.append(
        paper.html('p', { class: 'note' }, [`${marking.wrong.length} needles differ; they are marked.`]),
      )
    control.marked?.(marking)
    seen = marking.show
    show?.(seen)
    after.hidden = false
    verdict.scrollIntoView({ block: 'nearest' })
  }
  const once = (right: boolean): void => {
    if (!isMarked) events.marked(right)
    isMarked = true
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const answer = control.answer()
    if (answer === null) {
      verdict.removeAttribute('data-right')
      verdict.replaceChildren(paper.html('p', {}, [control.missing]))
      return
    }
    const marking = mark<K>(question, answer)
    once(marking.right)
    say(marking.right ? 'Right.' : 'No.', marking)
  })
  const reveal = button(paper, 'Show the answer', () => {
    const answer = rightAnswer<K>(question)
    control.fill(answer)
    once(false)
    say('The answer.', mark<K>(question, answer))
  })
  form.append(
    paper.html('p', { class: 'kind' }, [kindWords[question.kind]]),
    paper.html('p', { class: 'prompt' }, [question.prompt]),
    ...question.pictures.map((picture) => pictureOf(paper, picture)),
    control.element,
    paper.html('div', { class: 'quiz-buttons' }, [
      paper.html('button', { class: 'check' }, ['Check']),
      reveal,
      ...(show
        ? [
            button(paper, 'Set the machine so', () => {
              show(question.state)
            }),
          ]
        : []),
    ]),
    verdict,
    after,
  )
  return form
}
