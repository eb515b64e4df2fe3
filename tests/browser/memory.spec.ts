import { held, type Held, openSession, slide } from './held.ts'
import { expect, open, test } from './page.ts'

const expectFlat = (before: Held, after: Held): void => {
  expect(after.nodes).toBeLessThan(before.nodes * 1.02 + 20)
  expect(after.listeners).toBeLessThanOrEqual(before.listeners + 2)
  expect(after.heap).toBeLessThan(before.heap * 1.15 + 1)
}

test('two thousand inputs leave nothing behind', async ({ page }) => {
  await open(page, 'pass=9&break=strip.3.seized')
  const session = await openSession(page)
  await slide(page, 500)
  const before = await held(page, session)
  await slide(page, 2000)
  expectFlat(before, await held(page, session))
})

test('going to and fro through a chapter’s steps leaves nothing behind', async ({ page }) => {
  await page.goto('./chapters/rockers-and-strips/')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  const session = await openSession(page)
  const back = page.locator('.step-back')
  const forward = page.locator('.step-forward')
  const walk = async (times: number): Promise<void> => {
    for (let n = 0; n < times; n++) {
      for (let step = 0; step < 5; step++) await forward.click()
      for (let step = 0; step < 5; step++) await back.click()
    }
  }
  await walk(2)
  const before = await held(page, session)
  await walk(5)
  expectFlat(before, await held(page, session))
})

test('presses on the map of the bed leave nothing behind', async ({ page }) => {
  await open(page, 'pass=9')
  const map = await page.locator('[data-figure="chain"] svg:visible').boundingBox()
  if (!map) throw new Error('no picture of the chain')
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  const press = async (times: number): Promise<void> => {
    for (let n = 0; n < times; n++)
      await page.mouse.click(map.x + map.width * (0.2 + 0.01 * n), map.y + map.height - 8)
  }
  const slider = page.locator('.carriage-slider')
  const start = await slider.inputValue()
  await press(5)
  expect(await slider.inputValue()).not.toBe(start)
  const before = await held(page, session)
  await press(40)
  expectFlat(before, await held(page, session))
})
