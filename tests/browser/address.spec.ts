import { momentOf } from './model.ts'
import { drag, drawn, edit, expect, grip, open, outline, picture, settled, test, type Page } from './page.ts'

/** All that a reader sees of the state. */
const seen = async (page: Page): Promise<Record<string, string>> => ({
  picture: await picture(page).evaluate(outline),
  words: await page.locator('.happening').innerText(),
  place: await page.locator('.carriage-readout').innerText(),
  row: await page.locator('.row-readout').innerText(),
  card: await page.locator('.card-readout').innerText(),
  speed: await page.locator('.speed-readout').innerText(),
  broken: (await page.locator('.chip').allInnerTexts()).sort().join(),
})

test('whatever the reader does, the address says it, and opened again it shows the same', async ({
  page,
  context,
}) => {
  await open(page)
  await page.locator('.controls-fold summary').click()
  await page.locator('.row-forward').click()
  await page.locator('.row-forward').click()
  await page.locator('.speed').fill('900')
  await page.locator('button[popovertarget="card-choice"]').first().click()
  await page.locator('.card-choice').getByText('Fern', { exact: true }).click()
  await page.locator('.break').click()
  await page.locator('[data-kind="retainer.worn"]').click()
  await page.getByRole('button', { name: 'Break it' }).click()
  await page.locator('.carriage-slider').fill('63.25')
  await drag(page, await grip(page), 31)
  const { state } = await settled(page)
  expect(state).toMatchObject({ pass: 3, speed: 900, card: { kind: 'site', id: 'fern' } })
  expect(state.faults.map(({ kind }) => kind)).toEqual(['retainer.worn', 'strip.seized'])
  expect(state.at).not.toBe(63.25)

  const other = await context.newPage()
  await other.emulateMedia({ reducedMotion: 'reduce' })
  await other.goto(page.url())
  await expect(other.locator('.machine[data-live]')).toBeVisible()
  await drawn(other)
  expect(await seen(other)).toEqual(await seen(page))
})

test('long dragging writes the address a few times only and leaves the history alone', async ({ page }) => {
  await page.addInitScript(() => {
    const calls: string[] = []
    Object.assign(window, { calls })
    for (const name of ['replaceState', 'pushState'] as const) {
      const change = history[name].bind(history)
      history[name] = (...how) => {
        calls.push(name)
        change(...how)
      }
    }
  })
  await open(page, 'at=R20')
  const length = await page.evaluate(() => history.length)
  const since = Date.now()
  for (let n = 0; n < 40; n++) await page.locator('.carriage-slider').press('ArrowRight')
  await expect
    .poll(() => momentOf(new URL(page.url()).hash.slice(1)).state.at)
    .toBe(momentOf('at=R30').state.at)
  const seconds = (Date.now() - since) / 1000
  const calls = await page.evaluate(() => Reflect.get(window, 'calls') as string[])
  expect(new Set(calls)).toEqual(new Set(['replaceState']))
  expect(calls.length).toBeLessThanOrEqual(Math.ceil(seconds / 0.4))
  expect(await page.evaluate(() => history.length)).toBe(length)
  expect((await settled(page)).state.at).toBe(momentOf('at=R30').state.at)
})

test('editing the address changes the page, and the way back undoes it', async ({ page }) => {
  await open(page, 'at=R20&break=strip.3.seized')
  await edit(page, 'card=fern&pass=4&at=L7&break=pin.2.high&speed=700')
  await expect(page.locator('.carriage-readout')).toHaveText('L7, moving left')
  await expect(page.locator('.chip')).toHaveText(/Pin 2 stuck up/)
  await expect(page.locator('.card-readout')).toHaveText('Fern')
  await expect(page.locator('.row-readout')).toHaveText('Pass 4, card row 4')
  await expect(page.locator('.speed-readout')).toHaveText('700 mm/s')
  await page.goBack()
  await expect(page.locator('.carriage-readout')).toHaveText('R20, moving right')
  await expect(page.locator('.chip')).toHaveText(/Strip 3 seized/)
})

test('the plainest state has an address of its own, so that it is not taken for the home page', async ({
  page,
}) => {
  await open(page, 'at=R20&break=strip.3.seized')
  await page.getByRole('button', { name: 'Mend all' }).click()
  await page.locator('.carriage-slider').press('Home')
  await settled(page)
  await page.reload()
  await expect(page.locator('.carriage-readout')).toHaveText('L112, moving right')
  await expect(page.locator('.chips')).toHaveText('nothing')
})

test('the link is copied', async ({ page, context, browserName }) => {
  test.skip(browserName !== 'chromium', 'only Chromium lets a test read the clipboard')
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await open(page, 'pass=2&at=R20.25&break=strip.3.seized')
  await page.getByRole('button', { name: 'Copy link' }).click()
  await expect(page.locator('.notice')).toContainText('is copied')
  const link = await page.evaluate(() => navigator.clipboard.readText())
  expect(new URL(link).hash).toBe('#pass=2&at=R20.25&break=strip.3.seized')
  expect(new URL(link).pathname).toBe(new URL(page.url()).pathname)
  await page.locator('.carriage-slider').press('ArrowRight')
  await expect(page.locator('.notice')).toHaveText('')
})

test('where the browser refuses, the link is there to be copied by hand', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined })
  })
  await open(page, 'pass=2&at=R20.25')
  await page.getByRole('button', { name: 'Copy link' }).click()
  const text = page.getByRole('textbox', { name: 'Link to this state' })
  await expect(text).toHaveValue(/#pass=2&at=R20\.25$/)
  const chosen = await text.evaluate(
    (input: HTMLInputElement) => (input.selectionEnd ?? 0) - (input.selectionStart ?? 0),
  )
  expect(chosen).toBe((await text.inputValue()).length)
})
