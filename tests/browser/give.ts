import type { Question } from '@/lesson/question.ts'
import type { Locator } from './page.ts'

/** Puts an answer into a question's form as a person does. */
export const give = async (form: Locator, question: Question, answer: unknown): Promise<void> => {
  if (question.kind === 'needles') {
    const wanted = new Set(answer as Iterable<number>)
    for (const { index } of question.needles) {
      const button = form.locator(`[data-needle="${index}"]`)
      if (((await button.getAttribute('aria-pressed')) === 'true') !== wanted.has(index)) await button.click()
    }
  } else if (question.kind === 'order') {
    const order = answer as readonly string[]
    for (const [place, id] of order.entries()) {
      const label = question.steps.find((step) => step.id === id)!.label
      const item = form.locator('.order > li').filter({ hasText: label })
      const items = await form.locator('.order > li > span:first-child').allTextContents()
      for (let n = items.indexOf(label); n > place; n--)
        await item.getByRole('button', { name: /^Earlier/ }).click()
    }
  } else if (question.kind === 'number') await form.locator('input').fill(String(answer))
  else await form.locator(`input[value="${String(answer)}"]`).check()
}
