import { makersOf, questionOf } from '@/lesson/chapters.ts'
import { rightAnswer } from '@/lesson/marking.ts'
import { faultId } from '@/mechanism/fault.ts'
import { expectNoTrap, expectSeen, press, tabTo } from './hand.ts'
import { sceneWords } from '@/words/figures/scene.ts'
import { library, momentOf } from './model.ts'
import { drawn, expect, open, type Page, test as freshTest, lastingTest as test } from './page.ts'

const openChapter = async (page: Page, address: string): Promise<void> => {
  await page.goto(`./chapters/${address}`)
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  await drawn(page)
}

for (const [name, viewport] of [
  ['on a desk', { width: 1280, height: 720 }],
  ['at 200 %', { width: 640, height: 360 }],
  ['on a phone with keys', { width: 360, height: 740 }],
] as const)
  test(`a chapter is found, read and left ${name}`, async ({ page }) => {
    await page.setViewportSize(viewport)
    await page.goto('./chapters/')
    await tabTo(page, '.contents a[href$="/the-hold/"]')
    await page.keyboard.press('Enter')
    await expect(page.locator('.chapter[data-live]')).toBeVisible()
    await drawn(page)
    await press(page, 'Alt+PageDown')
    await expect(page.locator('.step[data-current] h2')).toBeFocused()
    await expect(page.locator('.step-name')).toHaveText(/^Step 2 of/)
    await tabTo(page, '.step[data-current] .predict input')
    await press(page, 'Space')
    await expect(page.locator('.step[data-current] .predict-said')).toHaveText(/^(Yes|No)\. /)
    await tabTo(page, '.step button.term', 'Shift+Tab')
    await press(page, 'Enter')
    await expect(page.locator('.term-words:popover-open')).toBeVisible()
    await press(page, 'Escape')
    await expect(page.locator('.term-words:popover-open')).toHaveCount(0)
    await expectNoTrap(page)
  })

test('every choice of a prediction is reached by arrows, and nothing is answered before it is asked for', async ({
  page,
}) => {
  await openChapter(page, 'rockers-and-strips/')
  // A prediction whose answer is shown elsewhere than its step begins.
  const form = page.locator('#a-broken-rocker .predict')
  const said = form.getByRole('status')
  await form.getByRole('radio').first().focus()
  // The page goes to the step of this prediction, and its machine with it.
  const happening = page.locator('.happening')
  let before = ''
  await expect(async () => {
    const last = before
    before = await happening.innerText()
    expect(before).toBe(last)
  }).toPass({ intervals: [500] })
  await press(page, 'ArrowDown', 'ArrowDown')
  await expect(form.getByRole('radio').nth(2)).toBeChecked()
  await expect(said).toBeEmpty()
  await expect(form.locator('.predict-answer')).not.toHaveAttribute('open')
  expect(await happening.innerText()).toBe(before)
  await press(page, 'Tab')
  await expect(form.getByRole('button', { name: 'Show what happens' })).toBeFocused()
  await press(page, 'Enter')
  await expect(said).toHaveText(/^(Yes|No)\. /)
  await expect(happening).not.toHaveText(before)
  await press(page, 'Shift+Tab', 'ArrowUp')
  await expect(said).toBeEmpty()
  await press(page, 'Enter')
  await expect(said).toHaveText(/^(Yes|No)\. /)
})

test('the machine is a key away from each step, and the step from the machine', async ({ page }) => {
  await openChapter(page, 'the-hold/')
  await expect(page.getByText('Alt and Page down for the next step')).toBeVisible()
  await press(page, 'Alt+PageDown', 'Alt+PageDown', 'Tab')
  await expect(page.locator('.step[data-current] .to-machine')).toBeFocused()
  await press(page, 'Enter')
  await expect(page.locator('.carriage-slider')).toBeFocused()
  await press(page, 'Tab', 'Enter')
  await expect(page.locator('.step[data-current] h2')).toBeFocused()
  await expect(page.locator('.step-name')).toHaveText(/^Step 3 of/)
})

test('a question of needles is answered, wrong and then right, and the next is asked', async ({ page }) => {
  await openChapter(page, 'when-a-part-fails/')
  const question = questionOf(makersOf(9)[1]!, 1, library)!
  if (question.kind !== 'needles') throw new Error('the second question asks for no needles')
  await tabTo(page, '.chapter-ends a, #questions button, #questions input')
  await expect(page.locator('#questions[data-live]')).toBeVisible()
  await tabTo(page, '.quiz-buttons button:nth-child(2)')
  await press(page, 'Enter')
  await tabTo(page, '.verdict-words ~ * button:last-child')
  await press(page, 'Enter')
  await expect(page.locator('.quiz-live .prompt').first()).toHaveText(question.prompt)
  await tabTo(page, '.needle-button')
  for (const { index } of question.needles) {
    if (rightAnswer(question).includes(index)) await press(page, 'Space')
    await press(page, 'ArrowRight')
  }
  await press(page, 'Home', 'Space')
  await tabTo(page, '.check')
  await press(page, 'Enter')
  await expect(page.locator('.verdict-words').first()).toContainText('No.')
  await tabTo(page, '.needle-button', 'Shift+Tab')
  await press(page, 'Space')
  await tabTo(page, '.check')
  await press(page, 'Enter')
  await expect(page.locator('.verdict-words').first()).toContainText('Right.')
  await expectNoTrap(page)
})

test('steps are put in order, and the button that moved one keeps the keyboard', async ({ page }) => {
  await openChapter(page, 'the-hold/')
  await tabTo(page, '.chapter-ends a, #questions button')
  await expect(page.locator('#questions[data-live]')).toBeVisible()
  await tabTo(page, '.order li:last-child button')
  const label = await page.locator('.order li:last-child > span').first().innerText()
  await press(page, 'Enter', 'Enter')
  await expect(page.locator('.order li').nth(2)).toContainText(label)
  await expect(page.locator('.order li').nth(2).locator('button').first()).toBeFocused()
  await tabTo(page, '.check')
  await press(page, 'Enter')
  await expect(page.locator('.verdict-words').first()).toContainText(/Right\.|No\./)
})

freshTest('a case is made, and its link copied', async ({ page, context, browserName }) => {
  if (browserName === 'chromium') await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await open(page, 'at=R20&break=strip.3.seized')
  await tabTo(page, '.make-case')
  await page.keyboard.press('Enter')
  await expect(page.locator('.case[data-live]')).toBeVisible()
  await tabTo(page, '#case-title')
  await page.keyboard.press('ControlOrMeta+a')
  await page.keyboard.type('Looked at in the shop')
  await tabTo(page, '#case-note')
  await page.keyboard.type('One strip, to be cleaned.')
  await tabTo(page, '.case-copy')
  await press(page, 'Enter')
  await expect(page.locator('.case-said')).toContainText('The link is copied.')
  const link = new URL(await page.evaluate(() => navigator.clipboard.readText()))
  expect(link.hash).toContain('title=Looked+at+in+the+shop')
  expect(momentOf(link.hash.slice(1)).state.faults.map(faultId)).toEqual(['strip.3.seized'])
  await expectNoTrap(page)
})

test('a fault is found: needles marked, a check’s outcome given, the likeliest kept', async ({ page }) => {
  await page.goto('./find/')
  await expect(page.locator('.answer').first()).toBeVisible()
  await tabTo(page, '.needle')
  for (let n = 0; n < 4; n++) await page.keyboard.press('PageDown')
  await press(page, 'Home', 'PageDown', 'PageDown', 'PageDown', 'PageDown')
  while (!(await page.locator('.needle:focus').getAttribute('aria-label'))?.startsWith('R3,'))
    await press(page, 'ArrowRight')
  await press(page, 'Space')
  await expect(page.locator('.needle:focus')).toHaveAccessibleName('R3, wrong: missed')
  await tabTo(page, '.every-eighth')
  await press(page, 'Enter')
  await expect(page.locator('.answer h3').first()).toHaveText('Strip 3 seized')
  // The second is what the likeliest machine would show.
  await tabTo(page, '.next-outcomes button + button')
  await press(page, 'Enter')
  await expect(page.locator('.answers-title')).toBeFocused()
  await expectSeen(page)
  // With several places each is a row that opens.
  if ((await page.locator('.answer details[open]').count()) === 0) {
    await tabTo(page, '.answer summary')
    await press(page, 'Enter')
  }
  await tabTo(page, '.keep')
  await press(page, 'Enter')
  await expect(page.locator('.finding-title')).toBeFocused()
  await expectSeen(page)
  await expectNoTrap(page)
})

test('the machine is looked at from another side and turned, and a part is asked what it does', async ({
  page,
}) => {
  await page.goto('./parts/')
  await expect(page.locator('.parts-bench[data-live]')).toBeVisible()
  await tabTo(page, '.parts-views button:nth-of-type(4)')
  await press(page, 'Enter')
  await expect(page.locator('.parts-title')).toHaveText(sceneWords.bed.title)
  const standpoint = page.locator('.parts-standpoint')
  const before = await standpoint.innerText()
  await tabTo(page, '.parts-turn [data-turn="right"]')
  await press(page, 'Enter', 'Enter', 'Enter', 'Enter')
  await expect(standpoint).not.toHaveText(before)
  await tabTo(page, '.parts-list > li[data-name="catch"] summary')
  await press(page, 'Enter')
  await expect(page.locator('.parts-list > li[data-name="catch"] details')).toHaveAttribute('open')
  await expectNoTrap(page)
})

test('a machine is measured: a value that can’t be, one that can, and what to set is read', async ({
  page,
}) => {
  await page.goto('./measure/')
  await expect(page.locator('.measure[data-live]')).toBeVisible()
  await tabTo(page, '.measure-item[data-name="presserLeft"] input')
  await page.keyboard.type('-1')
  await press(page, 'Tab')
  const item = page.locator('.measure-item[data-name="presserLeft"]')
  await expect(item.locator('.measure-trouble')).not.toBeEmpty()
  await press(page, 'Shift+Tab', 'ControlOrMeta+a')
  await page.keyboard.type('1.1')
  await press(page, 'Tab')
  await expect(item.locator('.measure-trouble')).toBeEmpty()
  await expect(page.locator('.measure-settings li', { hasText: 'Presser, moving left' })).toBeVisible()
  await tabTo(page, '.measure-turn')
  await expectNoTrap(page)
})

freshTest(
  'a figure is saved as a drawing, a film of it begun and given up, and its code copied',
  async ({ page, context, browserName }) => {
    if (browserName === 'chromium') await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await page.goto('./workbench/#at=R20&break=strip.3.seized')
    await expect(page.locator('.machine[data-live]')).toBeVisible()
    await tabTo(page, '.save-figure')
    await page.keyboard.press('Enter')
    const said = page.locator('.save-said')
    await expect(page.locator('.save-close')).toBeFocused()
    await tabTo(page, '.save-choices input:checked')
    await press(page, 'ArrowDown')
    await expect(page.getByLabel('Drawing (SVG)')).toBeChecked()
    const saved = page.waitForEvent('download')
    await tabTo(page, '.save-now')
    await press(page, 'Enter')
    expect((await saved).suggestedFilename()).toMatch(/\.svg$/)
    await expect(said).toHaveText(/^Saved as /)
    await tabTo(page, '.save-choices input:checked', 'Shift+Tab')
    while (!(await page.getByLabel('Film', { exact: true }).isChecked()))
      await press(page, 'Shift+Tab', 'ArrowDown')
    await tabTo(page, '.save-now')
    await page.keyboard.press('Enter')
    await expect(page.locator('.save-cancel')).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(said).toHaveText('The film was given up; nothing is saved.')
    await expectSeen(page)
    await press(page, 'Escape')
    await expect(page.locator('.save-figure').first()).toBeFocused()
    await tabTo(page, '.embed-figure')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('dialog', { name: 'Put it in your page' })).toBeVisible()
    await tabTo(page, '.embed-dialog button:not([formmethod])')
    await press(page, 'Enter')
    await expect(page.locator('.embed-dialog [role=status]')).toContainText('The code is copied.')
    expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(/^<iframe src="http/)
    await press(page, 'Escape')
    await expect(page.locator('.embed-figure').first()).toBeFocused()
  },
)

freshTest(
  'a job goes from the door to the door: seen, decided, done, proved and handed over',
  async ({ page }) => {
    await page.goto('./job/')
    await expect(page.locator('.jobs[data-live]')).toBeVisible()
    await tabTo(page, '.job-example')
    const title = page.locator('.job-moment:visible h2')
    /** Presses Enter, which leads to a moment of the job. */
    const enter = async (moment: string): Promise<void> => {
      await page.keyboard.press('Enter')
      await expect(title).toHaveText(moment)
    }
    const goOn = async (moment: string): Promise<void> => {
      await tabTo(page, '.job-next')
      await enter(moment)
      await expectSeen(page)
    }
    await enter('Intake')
    await goOn('Look')
    await expect(page.locator('.look-whole')).toContainText('no longer move')
    await goOn('Decide')
    await expect(page.locator('ol.decide-ways > li button').first()).toBeVisible()
    await tabTo(page, 'ol.decide-ways button')
    await enter('Work')
    await tabTo(page, '.work-steps input[type=checkbox]')
    await press(page, 'Space')
    await expect(page.locator('.work-steps input[type=checkbox]').first()).toBeChecked()
    await goOn('Measure')
    await goOn('Prove')
    await expect(page.locator('.prove-passes > li').first()).toBeVisible()
    await tabTo(page, '.prove-passes button')
    await press(page, 'Enter')
    await goOn('Hand over')
    await tabTo(page, '.hand-over-done')
    await press(page, 'Enter')
    await expect(page.getByLabel('It is')).toHaveValue('handed-over')
    // It comes with the answers, and moves what is below it.
    await expect(page.locator('.hand-over-case')).toBeVisible()
    await expectNoTrap(page)
  },
)
