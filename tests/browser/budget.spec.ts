import {
  click,
  expect,
  frames,
  gzipped,
  open,
  picture,
  shiftOf,
  test,
  watchScripts,
  watchShifts,
} from './page.ts'

/** All JavaScript of the page together, gzipped, in bytes: as it comes to life, and once a part is broken and it plays. */
const mostScript = { first: 70_000, all: 90_000 }

test('scripts take at most 70 kB at first, and 90 kB with all that a reader calls for', async ({ page }) => {
  const scripts = watchScripts(page)
  const weigh = async (): Promise<number> => {
    await page.waitForLoadState('networkidle')
    const inline = await page
      .locator('script:not([src]):not([type="application/json"])')
      .evaluateAll((all) => all.map((script) => script.textContent))
    const { files, bytes } = await scripts()
    const all = inline.reduce((sum, text) => sum + gzipped(text), bytes)
    console.log(`scripts: ${(all / 1000).toFixed(1)} kB in ${files} files`)
    return all
  }
  await open(page)
  expect(await weigh()).toBeLessThanOrEqual(mostScript.first)
  await picture(page).scrollIntoViewIfNeeded()
  await click(page, 'strip.5')
  await page.getByRole('button', { name: 'Break this part' }).click()
  await page.getByRole('button', { name: 'Close', exact: true }).click()
  await page.locator('.play').click()
  expect(await weigh()).toBeLessThanOrEqual(mostScript.all)
})

test.describe('while the page comes to life', () => {
  test.use({ motion: 'no-preference' })

  for (const width of [1280, 360])
    test(`nothing jumps, ${width} pixels wide`, async ({ page }) => {
      await page.setViewportSize({ width, height: 740 })
      await watchShifts(page)
      await page.goto('./')
      await expect(page.locator('.machine[data-live]')).toBeVisible()
      await page.waitForLoadState('networkidle')
      await frames(page, 12)
      expect(await shiftOf(page)).toBeLessThan(0.02)
    })
})
