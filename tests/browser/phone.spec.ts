import { expect, frames, grip, needlePixels, open, picture, settled, test, type Page } from './page.ts'
import { phone, tap } from './phone.ts'

test.use(phone)

/** Drags with one finger. */
const swipe = async (page: Page, from: { x: number; y: number }, byX: number, byY = 0): Promise<void> => {
  const session = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share = 0): Promise<unknown> =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x: from.x + byX * share, y: from.y + byY * share }],
    })
  await touch('touchStart')
  for (let n = 1; n <= 8; n++) await touch('touchMove', n / 8)
  await touch('touchEnd')
}

test('a tap on a part names it, and a tap on it breaks it', async ({ page }) => {
  await open(page, 'at=R20')
  await tap(page, 'strip.5')
  await expect(page.locator('.tip-name')).toHaveText('Strip 5')
  await expect(page.locator('.tip')).toBeInViewport({ ratio: 1 })
  await page.locator('.tip-break').tap()
  await page.locator('[data-kind="strip.seized"]').tap()
  await tap(page, 'strip.2')
  await expect(page.locator('.breaker').getByLabel('Strip', { exact: true })).toHaveValue('2')
  await page.locator('.form-break').tap()
  await expect(page.locator('.breaker')).toBeHidden()
  expect((await settled(page)).state.faults).toEqual([{ kind: 'strip.seized', at: [2], amount: null }])
})

test('a finger drags the carriage sideways, and scrolls the page up and down', async ({
  page,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'only Chromium lets a test drag with a finger')
  await open(page, 'at=R20&break=strip.3.seized')
  const pixels = await needlePixels(page)
  const hold = await grip(page)
  await swipe(page, { x: Math.max(hold.x, 130), y: hold.y }, 5 * pixels)
  const { state } = await settled(page)
  expect(state.at).toBeGreaterThan(121)
  expect(state.at).toBeLessThan(126)
  await swipe(page, { x: 180, y: 600 }, 0, -300)
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(100)
  await expect(picture(page)).toBeInViewport({ ratio: 0.95 })
})

test('a finger held on the carriage near the edge does not make it run', async ({ page, browserName }) => {
  test.skip(browserName !== 'chromium', 'only Chromium lets a test hold a finger down')
  await open(page, 'at=R20')
  const { y } = await grip(page)
  const session = await page.context().newCDPSession(page)
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: 335, y }] })
  await frames(page, 30)
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  await expect(page.locator('.carriage-readout')).toHaveText('R20, moving right')
})

test('a tap on the map jumps there', async ({ page }) => {
  await open(page, 'at=R20')
  const box = await picture(page).locator('.map-ticks[data-mark="ahead"]').boundingBox()
  await page.touchscreen.tap((box?.x ?? 0) + (box?.width ?? 0) - 30, (box?.y ?? 0) + 4)
  await expect.poll(async () => (await settled(page)).state.at).toBeGreaterThan(160)
})

test('choosing a card by finger closes the choice and shows the figure', async ({ page }) => {
  await open(page, 'at=R20')
  await page.locator('button[aria-labelledby="card-label card-name"]').tap()
  await page.locator('.card-choice').getByText('No card', { exact: true }).tap()
  await expect(page.locator('.card-choice')).toBeHidden()
  await expect(page.locator('.card-readout')).toHaveText('No card')
  await page.locator('button[aria-labelledby="card-label card-name"]').tap()
  await page.locator('.card-choice').getByRole('button', { name: 'Close' }).tap()
  await expect(page.locator('.card-choice')).toBeHidden()
})
