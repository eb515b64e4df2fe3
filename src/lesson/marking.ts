import { at } from '../mechanism/lookup.ts'
import type { Answers, Bodies, Body, Kind, Option, Question, Verdict } from './question.ts'

/** The mark of an answer, with its reason. */
export interface Marking extends Verdict {
  readonly right: boolean
  /** Indexes of the needles that were chosen or left wrongly; empty for other kinds. */
  readonly wrong: readonly number[]
}

const marking = (right: boolean, { reason, show }: Verdict, wrong: readonly number[] = []): Marking => ({
  right,
  reason,
  show,
  wrong,
})

/** Numbers are equal within half of the last decimal that a question asks for. */
const close = (one: number, other: number): boolean => Math.abs(one - other) < 0.005

const markOption = ({ options }: Bodies['part' | 'check'], id: string): Marking => {
  const option = options.find((one) => one.id === id)
  // An answer that was not offered is wrong, whatever is said to it.
  return marking(option?.right === true, option ?? at(options, 0))
}

const markers: { readonly [K in Kind]: (question: Bodies[K], answer: Answers[K]) => Marking } = {
  needles: ({ needles, slips, right }, answer) => {
    const chosen = new Set(answer)
    const wrong = needles.filter((needle) => chosen.has(needle.index) !== needle.right)
    const [first] = wrong
    if (!first) return marking(true, right)
    const slip = slips.find(
      (one) => one.chosen.length === chosen.size && one.chosen.every((index) => chosen.has(index)),
    )
    return marking(
      false,
      slip ?? first,
      wrong.map(({ index }) => index),
    )
  },
  part: markOption,
  check: markOption,
  order: ({ steps, right }, answer) => {
    const index = steps.findIndex(({ id }, n) => id !== answer[n])
    const due = steps[index]
    if (!due) return marking(true, right)
    const before = index === 0 ? 'first' : `straight after “${at(steps, index - 1).label}”`
    const early = steps.find(({ id }) => id === answer[index])
    if (!early) throw new Error(`the question has no step “${answer[index] ?? ''}”`)
    return marking(false, {
      reason: `“${early.label}” can’t come ${before}: “${due.label}” comes before it, because ${due.why}.`,
      show: due.show,
    })
  },
  number: ({ value, slips, how, right }, answer) => {
    if (close(answer, value)) return marking(true, right)
    const slip = slips.find((one) => close(one.value, answer))
    const off = `${answer} is too ${answer > value ? 'high' : 'low'}: ${how}`
    return marking(false, slip ?? { reason: off, show: right.show })
  },
}

/** Marks an answer. A wrong one gets the reason that belongs to it. */
export const mark = <K extends Kind>(
  question: Question<K> & { readonly kind: K },
  answer: Answers[K],
): Marking => markers[question.kind](question, answer)

/** The right one of a question's options. Throws where it has none. */
export const rightOption = ({ options }: Bodies['part' | 'check']): Option => {
  const option = options.find(({ right }) => right)
  if (!option) throw new Error('the question offers no right answer')
  return option
}

const rightAnswers: { readonly [K in Kind]: (question: Bodies[K]) => Answers[K] } = {
  needles: ({ needles }) => needles.flatMap(({ right, index }) => (right ? [index] : [])),
  part: (question) => rightOption(question).id,
  check: (question) => rightOption(question).id,
  order: ({ steps }) => steps.map(({ id }) => id),
  number: ({ value }) => value,
}

/** The answer that marks right. */
export const rightAnswer = <K extends Kind>(question: Question<K> & { readonly kind: K }): Answers[K] =>
  rightAnswers[question.kind](question)

/** What is said to the right answer, and where it can be seen. */
export const rightVerdict = (question: Body): Verdict => {
  switch (question.kind) {
    case 'part':
    case 'check':
      return rightOption(question)
    case 'needles':
    case 'order':
    case 'number':
      return question.right
  }
}
