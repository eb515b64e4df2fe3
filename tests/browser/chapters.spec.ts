import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { outlineOf } from '@/site/chapter-outline.ts'
import { write } from '@/link/write.ts'
import { library, momentOf } from './model.ts'
import { addressWritten, atRest, drawn, expect, frames, type Page, lastingTest as test } from './page.ts'

const folder = fileURLToPath(new URL('../../content/chapters/', import.meta.url))
const chapters = readdirSync(folder)
  .sort()
  .map((name) => ({
    slug: name.replace(/^\d+-(.*)\.mdx$/, '$1'),
    steps: outlineOf(readFileSync(`${folder}${name}`, 'utf8')).steps,
  }))

const openChapter = async (page: Page, address: string): Promise<void> => {
  await page.goto(`./chapters/${address}`)
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  await drawn(page)
}
const canonical = (text: string): string => write(momentOf(text).state, library)

/** The state that the address names, once it has followed. */
const addressed = async (page: Page): Promise<string> => {
  await addressWritten(page)
  return canonical(new URL(page.url()).hash.slice(1))
}

/** The step that the page says is being read. */
const stepNow = (page: Page): Promise<string | null> => page.locator('.step[data-current]').getAttribute('id')

for (const { slug, steps } of chapters)
  test(`${slug}: a step’s link opens at the step, and every step has its state and is reached by button and by key`, async ({
    page,
  }) => {
    expect(steps.length).toBeGreaterThanOrEqual(5)
    const middle = steps[Math.floor(steps.length / 2)]!
    for (const { id, state } of [middle, steps.at(-1)!]) {
      await openChapter(page, `${slug}/?step=${id}`)
      await expect.poll(() => stepNow(page)).toBe(id)
      expect(await addressed(page), id).toBe(canonical(state))
    }
    for (const { id, state } of steps.slice(0, -1).reverse()) {
      await page.keyboard.press('Alt+PageUp')
      await expect.poll(() => stepNow(page)).toBe(id)
      expect(await addressed(page), id).toBe(canonical(state))
    }
    for (const [n, step] of steps.entries()) {
      await expect(page.locator('.step-name')).toHaveText(`Step ${n + 1} of ${steps.length}: ${step.title}`)
      expect(await stepNow(page)).toBe(step.id)
      await expect(page.locator(`.drawing[data-figure="${step.figure}"]`)).toBeVisible()
      if (n + 1 < steps.length)
        if (n % 2 === 0) await page.locator('.step-forward').click()
        else await page.keyboard.press('Alt+PageDown')
      await drawn(page)
    }
    await page.keyboard.press('Alt+PageUp')
    await expect.poll(() => stepNow(page)).toBe(steps.at(-2)?.id)
    await page.locator('.step-back').click()
    await expect.poll(() => stepNow(page)).toBe(steps.at(-3)?.id)
  })

test('a window made narrower or wider, or a phone turned, keeps the step that is read, and the top of the page', async ({
  page,
}) => {
  const { slug, steps } = chapters[5]!
  const step = steps.at(-3)!.id
  await openChapter(page, `${slug}/?step=${step}`)
  for (const [width, height] of [
    [1024, 768],
    [360, 740],
    [740, 360],
    [1440, 900],
  ] as const) {
    await page.setViewportSize({ width, height })
    await frames(page, 6)
    expect(await stepNow(page), `${width} × ${height}`).toBe(step)
  }
  await openChapter(page, `${slug}/`)
  await page.setViewportSize({ width: 360, height: 740 })
  await frames(page, 6)
  expect(await page.evaluate(() => scrollY)).toBe(0)
})

test('a step’s former address, in the query or as a place, leads to the step that took its place', async ({
  page,
}) => {
  await openChapter(page, 'the-hold/?step=strip-goes-home')
  await expect.poll(() => stepNow(page)).toBe('held-until-the-gate')
  await expect(page).toHaveURL(/[?&]step=held-until-the-gate/)
  await expect(page.locator('.notice:visible')).toHaveCount(0)
  await openChapter(page, 'the-sweep-and-the-belt/#a-short-push')
  await expect.poll(() => stepNow(page)).toBe('long-enough')
})

test('a link’s exact state is kept, and the step is still known', async ({ page }) => {
  const [, , third] = chapters[4]!.steps
  await openChapter(page, `${chapters[4]!.slug}/?step=${third!.id}#at=L5&break=strip.6.over`)
  await expect.poll(() => stepNow(page)).toBe(third!.id)
  expect(await addressed(page)).toBe(canonical('at=L5&break=strip.6.over'))
})

test('the reader’s hand wins over the step, and the step can be had back', async ({ page }) => {
  const { slug, steps } = chapters[4]!
  await openChapter(page, `${slug}/?step=${steps[1]!.id}`)
  await page.locator('.carriage-slider').focus()
  await page.keyboard.press('PageUp')
  const moved = await addressed(page)
  expect(moved).not.toBe(canonical(steps[1]!.state))
  await page.getByRole('button', { name: 'Back to the step' }).click()
  expect(await addressed(page)).toBe(canonical(steps[1]!.state))
})

test('a prediction is asked before the answer is seen, and right is told from wrong', async ({ page }) => {
  await openChapter(page, `${chapters[4]!.slug}/`)
  const form = page.locator('.predict').first()
  await expect(form.locator('.predict-right')).toBeHidden()
  const right = Number(await form.getAttribute('data-right'))
  const choices = form.getByRole('radio')
  await choices.nth((right + 1) % (await choices.count())).check()
  await expect(form.getByRole('status')).toHaveText(/^No\. /)
  await expect(form.locator('.predict-right')).toBeHidden()
  await choices.nth(right).check()
  await expect(form.getByRole('status')).toHaveText(/^Yes\. /)
  expect(await addressed(page)).toBe(canonical((await form.getAttribute('data-state')) ?? ''))
})

test('a link in the text sets the machine to its state', async ({ page }) => {
  await openChapter(page, `${chapters[4]!.slug}/`)
  const link = page.locator('.go').filter({ visible: true }).first()
  const state = (await link.getAttribute('data-go')) ?? ''
  // Its step is gone to first, as by a reader who reads it: the page would follow the scroll after the press.
  await link.scrollIntoViewIfNeeded()
  await expect(page.locator('.step[data-current]').filter({ has: link })).toBeVisible()
  await link.click()
  expect(await addressed(page)).toBe(canonical(state))
})

test('a term opens its meaning by click and by key', async ({ page }) => {
  await openChapter(page, `${chapters[0]!.slug}/`)
  const term = page.locator('button.term').first()
  const words = page.locator(`#${(await term.getAttribute('popovertarget')) ?? ''}`)
  await expect(words).toBeHidden()
  await term.click()
  await expect(words).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(words).toBeHidden()
  await term.focus()
  await page.keyboard.press('Enter')
  await expect(words).toBeVisible()
})

test('the carriage follows the scroll through a step that travels', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'no-preference' })
  const chapter = chapters.find(({ slug }) => slug === 'a-row-then-a-fabric')!
  await openChapter(page, `${chapter.slug}/`)
  const travelling = page.locator('.step[data-to]').first()
  const id = await travelling.getAttribute('id')
  const place = async (): Promise<number> => Number(await page.locator('.carriage-slider').inputValue())
  await travelling.evaluate((step) => {
    scrollTo(0, scrollY + step.getBoundingClientRect().top - innerHeight * 0.4)
  })
  await expect.poll(() => stepNow(page)).toBe(id)
  const first = await atRest(place)
  await page.mouse.wheel(0, 150)
  await expect.poll(place).not.toBe(first)
})
