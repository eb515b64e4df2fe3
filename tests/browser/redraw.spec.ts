import type { CDPSession, Page } from '@playwright/test'
import { drawn, expect, test } from './page.ts'

/**
 * In ms of the page's own thread, so that other programs on the machine don't count. The aim for the 95th percentile is 4;
 * slower machines than the one it is measured on may take half as long again.
 */
const most = { median: 4, percentile95: 6 }

/** How long a picture may take at 60 a second, in ms; four times slower it may take eight of these. */
const frame = 1000 / 60
const mostFrames: Readonly<Record<number, number>> = { 1: 1, 4: 8 }

/** Fewer where the machine is slowed down, or it would take too long. */
const inputsOf = (slowed: number): number => (slowed === 1 ? 300 : 100)

const pages = [
  { name: 'the home page', address: './#at=L98&break=strip.3.seized', beside: '', slowed: 1 },
  ...[1, 4].map((slowed) => ({
    name: `the workbench with two faults and the fabric open${slowed === 1 ? '' : `, ${slowed} times slower`}`,
    address: './workbench/?beside=fabric#pass=9&at=L98&break=pin.5.low&break=strip.3.seized',
    beside: '.side .yarn.second',
    slowed,
  })),
]

/** What the page's thread has taken so far for its scripts and for all that it does, in ms. */
const taken = async (session: CDPSession): Promise<{ scripts: number; all: number }> => {
  const { metrics } = await session.send('Performance.getMetrics')
  const of = (wanted: string): number => (metrics.find(({ name }) => name === wanted)?.value ?? NaN) * 1000
  return { scripts: of('ScriptDuration'), all: of('TaskDuration') }
}

/** Moves the slider on by less than half a needle, and waits until that is drawn. */
const move = (page: Page, n: number): Promise<void> =>
  page.locator('.carriage-slider').evaluate(
    (element, value) => {
      if (!(element instanceof HTMLInputElement)) throw new Error('no slider')
      element.value = value
      element.dispatchEvent(new Event('input', { bubbles: true }))
      return new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done)))
    },
    String(2 + n * 0.45),
  )

const shareOf = (times: readonly number[], part: number): number =>
  times.toSorted((one, other) => one - other)[Math.floor(part * (times.length - 1))] ?? NaN

for (const { name, address, beside, slowed } of pages)
  test(`a slider input is drawn in little time: ${name}`, async ({ page }) => {
    test.slow()
    const inputs = inputsOf(slowed)
    await page.goto(address)
    await expect(page.locator('.machine[data-live]')).toBeVisible()
    await drawn(page)
    if (beside !== '') await expect(page.locator(beside).first()).toHaveAttribute('d', /M/)
    const session = await page.context().newCDPSession(page)
    await session.send('Performance.enable', { timeDomain: 'threadTicks' })
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowed })
    const picture = page.locator('.drawing:not([hidden]) svg:visible .carriage').first()
    const before = await picture.getAttribute('x')
    const scripts: number[] = []
    const frames: number[] = []
    let last = await taken(session)
    for (let n = 0; n < inputs; n++) {
      await move(page, n)
      const now = await taken(session)
      scripts.push(now.scripts - last.scripts)
      frames.push(now.all - last.all)
      last = now
    }
    expect(await picture.getAttribute('x')).not.toBe(before)
    const late = frames.filter((time) => time > frame).length
    const told = (times: readonly number[]): string =>
      [0.5, 0.95, 1].map((part) => shareOf(times, part).toFixed(2)).join(', ')
    console.log(
      `redraw of ${inputs} inputs, ${name}: scripting ${told(scripts)} ms (median, 95th percentile, most), all work ${told(frames)} ms, ${late} over ${frame.toFixed(1)} ms`,
    )
    expect(shareOf(scripts, 0.5)).toBeGreaterThan(0)
    expect(shareOf(scripts, 0.5)).toBeLessThan(most.median * slowed ** 1.3)
    expect(shareOf(scripts, 0.95)).toBeLessThan(most.percentile95 * slowed ** 1.3)
    expect(shareOf(frames, 0.95)).toBeLessThan(frame * (mostFrames[slowed] ?? 0) * 1.2)
    expect(shareOf(frames, 0.5)).toBeLessThan(frame * (mostFrames[slowed] ?? 0))
  })
