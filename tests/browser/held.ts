import type { CDPSession, Page } from '@playwright/test'
import { drawn } from './page.ts'

/** What a page holds: elements, listeners, and memory in MB. */
export interface Held {
  readonly nodes: number
  readonly listeners: number
  readonly heap: number
}

/** Opens the way to ask a page what it holds. */
export const openSession = async (page: Page): Promise<CDPSession> => {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  return session
}

/** What a page holds once all that nobody needs is gone. */
export const held = async (page: Page, session: CDPSession): Promise<Held> => {
  await drawn(page)
  await session.send('HeapProfiler.collectGarbage')
  const { metrics } = await session.send('Performance.getMetrics')
  const of = (name: string): number => metrics.find((metric) => metric.name === name)?.value ?? NaN
  return { nodes: of('Nodes'), listeners: of('JSEventListeners'), heap: of('JSHeapUsedSize') / 1e6 }
}

/** Moves the carriage this many times, many to a picture of the screen. */
export const slide = (page: Page, inputs: number): Promise<void> =>
  page.locator('.carriage-slider').evaluate(async (slider, count) => {
    if (!(slider instanceof HTMLInputElement)) throw new Error('no slider')
    for (let n = 0; n < count; n++) {
      slider.value = String((n * 7.25) % 200)
      slider.dispatchEvent(new Event('input', { bubbles: true }))
      if (n % 20 === 0) await new Promise((done) => requestAnimationFrame(done))
    }
  }, inputs)
