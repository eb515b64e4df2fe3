import { makersOf, questionOf } from '@/lesson/chapters.ts'
import { rightAnswer } from '@/lesson/marking.ts'
import { storageKey } from '@/browser/storage.ts'
import { give } from './give.ts'
import { library } from './model.ts'
import { expect, type Locator, type Page, test } from './page.ts'

const markup = '<img src=x onerror="window.hurt=1"><script>window.hurt=1</script>'

/** Ways in which a browser may keep nothing. Each is in the page before its first script. */
const refusals = {
  denied: () => {
    const deny = (): never => {
      throw new DOMException('The user denied it.', 'SecurityError')
    }
    Object.defineProperty(window, 'localStorage', { get: deny })
    Object.defineProperty(window, 'sessionStorage', { get: deny })
    Object.defineProperty(window, 'indexedDB', { get: deny })
    Object.defineProperty(window, 'caches', { get: deny })
    window.BroadcastChannel = new Proxy(window.BroadcastChannel, { construct: deny })
  },
  full: () => {
    // What was kept while there was room stays, and what is done now comes on top of it.
    localStorage.setItem('every-eighth-needle', '{"version":2,"steps":{"1":["hole"]},"answers":{}}')
    Storage.prototype.setItem = () => {
      throw new DOMException('It is full.', 'QuotaExceededError')
    }
  },
}

const chapter = './chapters/feeler-pins/'
const notKept = 'This browser does not let the site keep your progress'

/** The chapter's questions, brought to life. */
const questions = async (page: Page): Promise<Locator> => {
  const quiz = page.locator('#questions')
  await quiz.scrollIntoViewIfNeeded()
  await expect(quiz).toHaveAttribute('data-live', '')
  return quiz
}

/** Answers the first of the chapter's kinds of question rightly. */
const answer = async (quiz: Locator, seed: number): Promise<void> => {
  const question = questionOf(makersOf(3)[0]!, seed, library)!
  const form = quiz.locator('.course').first().locator('form.question')
  await expect(form.locator('.prompt')).toHaveText(question.prompt)
  await give(form, question, rightAnswer(question))
  await form.getByRole('button', { name: 'Check', exact: true }).click()
  await expect(form.locator('.verdict-words')).toContainText('Right.')
}

for (const [name, refuse] of Object.entries(refusals))
  test(`storage ${name}: a chapter and its questions work, and both pages say that nothing is kept`, async ({
    page,
  }) => {
    await page.addInitScript(refuse)
    await page.goto(chapter)
    await expect(page.locator('.chapter[data-live]')).toBeVisible()
    const quiz = await questions(page)
    await expect(quiz.getByRole('status').last()).toContainText(notKept)
    await answer(quiz, 1)
    // What was answered counts as long as the page is open: the next of the kind is another one.
    await quiz.getByRole('button', { name: 'Another like it' }).click()
    await answer(quiz, 2)
    await expect(quiz.locator('.quiz-live > .note')).toContainText(notKept)
    await page.goto('./chapters/')
    await expect(page.locator('.progress-said')).toContainText(notKept)
    await expect(page.locator('.progress-none')).toBeVisible({ visible: name === 'denied' })
  })

test('storage denied: every other page works as ever', async ({ page }) => {
  await page.addInitScript(refusals.denied)
  for (const [address, alive] of [
    ['./#break=strip.3.seized', '.machine[data-live] .chip'],
    ['./workbench/?beside=fabric', '.machine[data-live]'],
    ['./find/#pass=1.right.500.wL94-R99x8', '.answer h3'],
    ['./case/#title=A&break=strip.3.seized&end=1', '.case[data-live] .case-parts li'],
    ['./search/?q=pawl', '.results a'],
    ['./paper/worksheets/?seed=7', '.worksheet-name:text-is("7")'],
    ['./job/', '.jobs[data-live]'],
    ['./measure/#own=1_presserLeft-1.1', '.measure[data-live] .measure-settings li'],
    ['./parts/#view=30.-20.100', '.parts-bench[data-live]'],
    ['./embed/hold/?theme=dark#at=R12', '.embed[data-live]'],
    ['./class/the-hold/', '.machine[data-live]'],
  ] as const) {
    await page.goto(address)
    await expect(page.locator(alive).first()).toBeVisible()
  }
  await page.keyboard.press('ArrowRight')
  await expect(page).toHaveURL(/step=/)
  await page.goto('./class/the-hold/speaker/')
  await expect(page.locator('.speaker-heard')).toHaveText(
    'This browser can’t keep two windows in step, so turn each of them yourself.',
  )
})

for (const [what, text] of [
  ['no JSON', `{"version":2,"steps":{"3":["${markup}`],
  ['of another shape', JSON.stringify([markup, { version: 2 }])],
  ['enormous', 'x'.repeat(2_000_000)],
] as const)
  test(`what was kept is ${what}: it is set aside, that is said, and it is cleared when asked`, async ({
    page,
  }) => {
    await page.goto('./licences/')
    await page.evaluate(([key, value]) => localStorage.setItem(key, value), [storageKey, text] as const)
    await page.goto(chapter)
    await answer(await questions(page), 1)
    await page.goto('./chapters/')
    await expect(page.locator('.contents [data-chapter="3"] .progress-line')).toContainText('1 of')
    await expect(page.locator('.progress-said')).toContainText(
      'can’t be read, so it starts again from nothing',
    )
    const values = (): Promise<string[]> => page.evaluate(() => Object.values(localStorage) as string[])
    expect(await values()).toContain(text)
    await page.getByRole('button', { name: 'Clear', exact: true }).click()
    await page.getByRole('button', { name: 'Clear it' }).click()
    await expect(page.locator('.progress-said')).toHaveText('Your progress is cleared.')
    expect(await values()).toEqual([])
  })

test('what was kept names things that are none, in markup: what fits is shown, and nothing runs', async ({
  page,
}) => {
  const steps = { 3: ['heights', markup], [markup]: ['x'], 0: [markup], 99: ['x'] }
  const own = { right: 1, wrong: Number.MAX_SAFE_INTEGER, box: 99, due: -1 }
  const answers = {
    [makersOf(3)[0]!]: own,
    '0.row': { right: 1, wrong: 0 },
    '1.none': { right: 1, wrong: 0 },
  }
  await page.goto('./licences/')
  await page.evaluate(([key, value]) => localStorage.setItem(key, value), [
    storageKey,
    JSON.stringify({ version: 2, steps, answers }),
  ] as const)
  await page.goto('./chapters/')
  await expect(page.locator('.contents [data-chapter="3"] .progress-line')).toHaveText(
    /^2 of \d+ steps, 0 of \d questions$/,
  )
  await page.goto(chapter)
  await answer(await questions(page), 1)
  expect(await page.evaluate((): unknown => Reflect.get(window, 'hurt'))).toBeUndefined()
})

const clipboards = {
  missing: () => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined })
  },
  denied: () => {
    const writeText = (): Promise<never> => Promise.reject(new DOMException('no', 'NotAllowedError'))
    Object.defineProperty(navigator, 'clipboard', { value: { writeText } })
  },
}

for (const [name, refuse] of Object.entries(clipboards))
  test(`clipboard ${name}: each link is in a field, chosen, to be copied by hand`, async ({ page }) => {
    await page.addInitScript(refuse)
    for (const [address, button, field] of [
      ['./#pass=2&at=R20.25', 'Copy link', '.link-text'],
      ['./workbench/#pass=2&at=R20.25', 'Copy link', '.link-text'],
      ['./case/?make#title=A&break=strip.3.seized&end=1', /Copy/, '.case-link-text'],
      ['./find/#pass=1.right.500.wR3', /Copy/, '.find-link'],
    ] as const) {
      await page.goto(address)
      await expect(page.locator('[data-live]').first()).toBeVisible()
      await page.getByRole('button', { name: button }).filter({ visible: true }).first().click()
      await expect(page.getByText('The browser does not let this page copy.')).toBeVisible()
      const text = page.locator(field)
      await expect(text).toHaveValue(/^http.*#.+$/)
      expect(
        await text.evaluate((input: HTMLInputElement) => [input.selectionStart, input.selectionEnd]),
      ).toEqual([0, (await text.inputValue()).length])
      expect(new URL(await text.inputValue()).hash).toContain(new URL(address, 'http://x/').hash.slice(0, 8))
    }
  })
