import type { Answers, Kind, Question } from '@/lesson/question.ts'
import { rightAnswer } from '@/lesson/marking.ts'

/** With one needle more, or one less. */
const toggled = (chosen: readonly number[], index: number): number[] =>
  chosen.includes(index) ? chosen.filter((one) => one !== index) : [...chosen, index].sort((a, b) => a - b)

const swapped = (order: readonly string[], n: number): string[] => {
  const changed = [...order]
  ;[changed[n], changed[n + 1]] = [order[n + 1]!, order[n]!]
  return changed
}

/** Without repeats, which come where one needle more is a known mix-up too. */
const distinct = <T>(answers: readonly T[]): T[] => [
  ...new Map(answers.map((answer) => [JSON.stringify(answer), answer])).values(),
]

/** Wrong answers to a question: all there are, or each single slip and each known mix-up. */
export const wrongAnswers = (question: Question): Answers[Kind][] => {
  switch (question.kind) {
    case 'needles': {
      const right = rightAnswer(question)
      return distinct([
        ...question.slips.map(({ chosen }) => chosen),
        ...question.needles.map(({ index }) => toggled(right, index)),
      ])
    }
    case 'part':
    case 'check':
      return question.options.filter(({ right }) => !right).map(({ id }) => id)
    case 'order': {
      const right = rightAnswer(question)
      return right.slice(1).map((_, n) => swapped(right, n))
    }
    case 'number':
      return distinct([
        ...question.slips.map(({ value }) => value),
        question.value + 0.37,
        question.value + 1000,
        question.value - 0.37,
      ])
  }
}
