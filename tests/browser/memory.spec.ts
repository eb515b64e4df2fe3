import type { CDPSession, Page } from '@playwright/test'
import { drawn, expect, open, test } from './page.ts'

/** What the page holds once all that nobody needs is gone: elements, listeners, and memory in MB. */
const held = async (page: Page, session: CDPSession): Promise<Record<string, number>> => {
  await drawn(page)
  await session.send('HeapProfiler.collectGarbage')
  const { metrics } = await session.send('Performance.getMetrics')
  const of = (name: string): number => metrics.find((metric) => metric.name === name)?.value ?? NaN
  return { nodes: of('Nodes'), listeners: of('JSEventListeners'), heap: of('JSHeapUsedSize') / 1e6 }
}

const expectFlat = (before: Record<string, number>, after: Record<string, number>): void => {
  console.log(`held before ${JSON.stringify(before)}, after ${JSON.stringify(after)}`)
  expect(after['nodes']).toBeLessThan((before['nodes'] ?? 0) * 1.02 + 20)
  expect(after['listeners']).toBeLessThanOrEqual((before['listeners'] ?? 0) + 2)
  expect(after['heap']).toBeLessThan((before['heap'] ?? 0) * 1.15 + 1)
}

/** Moves the carriage this many times, many to a picture of the screen. */
const slide = (page: Page, inputs: number): Promise<void> =>
  page.locator('.carriage-slider').evaluate(async (slider, count) => {
    if (!(slider instanceof HTMLInputElement)) throw new Error('no slider')
    for (let n = 0; n < count; n++) {
      slider.value = String((n * 7.25) % 200)
      slider.dispatchEvent(new Event('input', { bubbles: true }))
      if (n % 20 === 0) await new Promise((done) => requestAnimationFrame(done))
    }
  }, inputs)

test('ten thousand inputs leave nothing behind', async ({ page }) => {
  test.setTimeout(90_000)
  await open(page, 'pass=9&break=strip.3.seized')
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  await slide(page, 500)
  const before = await held(page, session)
  await slide(page, 10_000)
  expectFlat(before, await held(page, session))
})

test('going to and fro through a chapter’s steps leaves nothing behind', async ({ page }) => {
  test.setTimeout(90_000)
  await page.goto('./chapters/rockers-and-strips/')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
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
