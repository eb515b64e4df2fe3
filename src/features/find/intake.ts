import { isIntakeAnswer, questionOf, settledAnswers } from '../../find/intake.ts'
import { counted } from '../../words/lists.ts'
import { effectWords } from '../../words/intake.ts'
import { required, setText } from '../../browser/dom.ts'
import type { FindStore } from './store.ts'

/** What the owner of the machine answers, with what each answer changes. */
export const bindIntake = (root: HTMLElement, store: FindStore): void => {
  const section = required(root, '.intake', HTMLElement)
  const inputs = [...section.querySelectorAll('input')]
  section.addEventListener('change', () => {
    const answers = inputs.flatMap(({ checked, value }) => (checked && isIntakeAnswer(value) ? [value] : []))
    store.set({ intake: settledAnswers(answers) })
  })
  store.subscribe(({ session: { intake } }, before) => {
    if (before?.session.intake === intake) return
    const count = required(section, '.intake-count', HTMLElement)
    setText(count, intake.length > 0 ? `(${counted(intake.length, 'answer')})` : '')
    const given: readonly string[] = intake
    for (const input of inputs) {
      const question = input.name.replace('asked-', '')
      const isAnswered = intake.some((answer) => questionOf(answer) === question)
      input.checked = input.value === '' ? !isAnswered : given.includes(input.value)
    }
    for (const effect of section.querySelectorAll<HTMLElement>('.intake-effect')) {
      const answer = intake.find((one) => questionOf(one) === effect.dataset['question'])
      setText(effect, answer ? effectWords(answer) : '')
    }
  })
}
