import type { Answers, Bodies, Body, Kind, Question, Verdict } from './question.ts'

/** What an answer comes to. */
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

/** Numbers are compared to half of the last decimal that anyone is asked for. */
const close = (one: number, other: number): boolean => Math.abs(one - other) < 0.005

const markOption = ({ options }: Bodies['part' | 'check'], id: string): Marking => {
  const option = options.find((one) => one.id === id) ?? options[0]!
  return marking(option.right && option.id === id, option)
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
    const place = steps.findIndex(({ id }, n) => id !== answer[n])
    const due = steps[place]
    if (!due) return marking(true, right)
    const before = place === 0 ? 'first' : `straight after “${steps[place - 1]?.label ?? ''}”`
    const early = steps.find(({ id }) => id === answer[place])?.label ?? ''
    return marking(false, {
      reason: `“${early}” can’t come ${before}: “${due.label}” comes before it, because ${due.why}.`,
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

const rightOption = ({ options }: Bodies['part' | 'check']): string =>
  options.find(({ right }) => right)?.id ?? ''

const rightAnswers: { readonly [K in Kind]: (question: Bodies[K]) => Answers[K] } = {
  needles: ({ needles }) => needles.flatMap(({ right, index }) => (right ? [index] : [])),
  part: rightOption,
  check: rightOption,
  order: ({ steps }) => steps.map(({ id }) => id),
  number: ({ value }) => value,
}

/** The answer that marks right. */
export const rightAnswer = <K extends Kind>(question: Question<K> & { readonly kind: K }): Answers[K] =>
  rightAnswers[question.kind](question)

/** What is said to the right answer, and where it can be seen. */
export const rightVerdict = (question: Body): Verdict =>
  'options' in question
    ? (question.options.find(({ right }) => right) ?? question.options[0]!)
    : question.right
