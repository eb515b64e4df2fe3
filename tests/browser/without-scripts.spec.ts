import { describeFrame } from '@/words/frame-description.ts'
import { layouts } from '@/drawings/mend/layout.ts'
import { trailSentence } from '@/words/figures/mend.ts'
import { momentOf } from './model.ts'
import { test as plain } from '@playwright/test'
import { edit, expect, open, outline, picture, test, type Page } from './page.ts'

const home = momentOf('at=R8&break=strip.3.seized')

const expectPictureAndWords = async (page: Page): Promise<void> => {
  await expect(page.getByRole('heading', { level: 1 })).toContainText('knitting machine')
  await expect(page.locator('.home-lead')).toHaveText(trailSentence(home.run, layouts.wide.subject))
  const fabric = page.locator('.home-drawing svg').filter({ visible: true })
  await expect(fabric).toHaveCount(1)
  await expect(fabric).toBeInViewport()
  await expect(fabric.locator('.trail-line')).toBeVisible()
  await expect(fabric.locator('.needle-name', { hasText: 'R11 missed' })).toBeVisible()
  await expect(picture(page)).toHaveCount(1)
  expect(await picture(page).locator('.needle').count()).toBeGreaterThan(25)
  await expect(picture(page).locator('.verdict', { hasText: 'missed' }).first()).toBeVisible()
  await expect(page.locator('.happening')).toHaveText(describeFrame(home.frame))
  await expect(page.locator('.happening')).toContainText('strip 3')
}

for (const width of [1280, 360])
  plain.describe(`without scripts, ${width} pixels wide`, () => {
    plain.use({ javaScriptEnabled: false, viewport: { width, height: 740 } })

    plain(
      'the built picture and the words are there, and no control that would do nothing',
      async ({ page }) => {
        await page.goto('./')
        await expectPictureAndWords(page)
        await expect(page.locator('.broken-words')).toHaveText('Broken here: Strip 3 seized.')
        for (const kind of ['button', 'input', 'select', 'summary', '.parts'])
          await expect(page.locator('main').locator(kind).filter({ visible: true })).toHaveCount(0)
      },
    )
  })

plain('where the scripts do not arrive, the picture and the words stand all the same', async ({ page }) => {
  await page.route(/\.js$/, (route) => route.abort())
  await page.goto('./')
  await expectPictureAndWords(page)
  await expect(page.locator('.machine').locator('button').filter({ visible: true })).toHaveCount(0)
})

for (const width of [1280, 360])
  test(`scripts draw the very picture that was built, ${width} pixels wide`, async ({
    page,
    browser,
    baseURL,
  }) => {
    await page.setViewportSize({ width, height: 740 })
    await open(page, 'at=R30')
    await edit(page, 'at=R8&break=strip.3.seized')
    const still = await browser.newPage({
      ...(baseURL === undefined ? {} : { baseURL }),
      javaScriptEnabled: false,
      viewport: { width, height: 740 },
    })
    await still.goto('./')
    expect(await picture(page).evaluate(outline)).toBe(await picture(still).evaluate(outline))
    await still.close()
  })
