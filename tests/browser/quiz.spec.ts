import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { makersOf, questionOf } from '@/lesson/chapters.ts'
import { mark, rightAnswer } from '@/lesson/marking.ts'
import type { Question } from '@/lesson/question.ts'
import { needleIndex } from '@/mechanism/bed.ts'
import { give } from './give.ts'
import { library } from './model.ts'
import { addressWritten, expect, type Locator, type Page, lastingTest as test } from './page.ts'

const slugs = readdirSync(fileURLToPath(new URL('../../content/chapters/', import.meta.url)))
  .sort()
  .map((name) => name.replace(/^\d+-(.*)\.mdx$/, '$1'))

const quizOf = async (page: Page, chapter: number, state = ''): Promise<Locator> => {
  await page.goto(`./chapters/${slugs[chapter - 1] ?? ''}/${state}`)
  const quiz = page.locator('#questions')
  await quiz.scrollIntoViewIfNeeded()
  await expect(quiz).toHaveAttribute('data-live', '')
  return quiz.locator('.quiz-live .course').first()
}

/** An answer that is not right. */
const wrongAnswer = (question: Question): unknown => {
  if (question.kind === 'needles') {
    const right = rightAnswer(question)
    const other = question.needles.find(({ index }) => !right.includes(index))!
    return [...right, other.index]
  }
  if (question.kind === 'order') return [...question.offered]
  if (question.kind === 'number') return rightAnswer(question) + 500
  return question.options.find(({ id }) => id !== rightAnswer(question))!.id
}

test('where a link has column 1 at another needle, the questions are about that bed', async ({ page }) => {
  const course = await quizOf(page, 5, '#at=R15&first=R13')
  const question = questionOf('5.strip', 1, library, { columnOne: needleIndex('R13')! })!
  expect(question.prompt).toContain('R13 is on strip 1')
  await expect(course.locator('form.question .prompt')).toHaveText(question.prompt)
})

for (const chapter of slugs.keys())
  test(`chapter ${chapter + 1}: each question takes a wrong and a right answer, each with its reason`, async ({
    page,
  }) => {
    const course = await quizOf(page, chapter + 1)
    const makers = makersOf(chapter + 1)
    expect(makers.length).toBeGreaterThanOrEqual(4)
    const kinds = new Set<string>()
    for (const maker of makers) {
      const question = questionOf(maker, 1, library)!
      kinds.add(question.kind)
      const form = course.locator('form.question')
      await expect(form.locator('.prompt')).toHaveText(question.prompt)
      const wrong = wrongAnswer(question)
      await give(form, question, wrong)
      await form.getByRole('button', { name: 'Check', exact: true }).click()
      await expect(form.locator('.verdict-words')).toContainText('No.')
      await expect(form.locator('.verdict-words')).toContainText(mark(question, wrong as never).reason)
      await give(form, question, rightAnswer(question))
      await form.getByRole('button', { name: 'Check', exact: true }).click()
      await expect(form.locator('.verdict-words')).toContainText('Right.')
      await course.getByRole('button', { name: /Next question|Back to the first/ }).click()
    }
    expect(kinds.size).toBeGreaterThanOrEqual(3)
  })

test('“Another like it” asks again, and the machine is shown with the answer', async ({ page }) => {
  const course = await quizOf(page, 5)
  const question = questionOf(makersOf(5)[0]!, 1, library)!
  const wrong = wrongAnswer(question)
  await give(course, question, wrong)
  await course.getByRole('button', { name: 'Check', exact: true }).click()
  await addressWritten(page)
  const { show } = mark(question, wrong as never)
  const shown = new URLSearchParams(new URL(page.url()).hash.slice(1))
  expect(shown.getAll('break').sort()).toEqual(new URLSearchParams(show).getAll('break').sort())
  await course.getByRole('button', { name: 'Another like it' }).click()
  const next = questionOf(makersOf(5)[0]!, 2, library)!
  await expect(course.locator('.prompt')).toHaveText(next.prompt)
})

test('progress is kept, shown on the contents page, saved as a file and cleared', async ({ page }) => {
  const course = await quizOf(page, 3)
  const question = questionOf(makersOf(3)[0]!, 1, library)!
  await give(course, question, rightAnswer(question))
  await course.getByRole('button', { name: 'Check', exact: true }).click()
  await page.goto('./chapters/')
  await expect(page.locator('.contents [data-chapter="3"] .progress-line')).toContainText('1 of')
  const download = page.waitForEvent('download')
  await page.locator('.progress-save').click()
  const stream = await (await download).createReadStream()
  let text = ''
  for await (const chunk of stream) text += String(chunk)
  expect(text).toContain(makersOf(3)[0]!)
  await page.locator('.progress-clear').click()
  await page.locator('.progress-yes').click()
  await page.reload()
  expect(await page.evaluate(() => JSON.stringify(Object.values(localStorage)))).not.toContain(
    makersOf(3)[0]!,
  )
})
