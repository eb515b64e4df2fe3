import type { Page } from '@playwright/test'
import { drawn, expect, test } from '../browser/page.ts'
import { note, shareOf, spread } from './figure.ts'
import { scriptingTimes, traceCategories } from './trace.ts'

/** How long a picture may take at 60 a second, in ms. */
const picture = 1000 / 60

/** The most scripting in ms of the page's own thread, for 95 of 100 inputs. */
const mostScripting = 4

/**
 * How fast the processor is made to be, how many inputs are timed, and the aim in ms for the part of them named. Pictures
 * are timed by the clock, in which other programs on the machine count too.
 */
const speeds = [
  { slowed: 1, inputs: 300, part: 0.95, name: '95th percentile', most: picture },
  { slowed: 4, inputs: 150, part: 0.5, name: 'median', most: 3 * picture },
]

const pages = [
  { name: 'the workbench', address: './workbench/', beside: '' },
  {
    name: 'the workbench with two faults and the fabric open',
    address: './workbench/?beside=fabric#pass=9&at=L98&break=pin.5.low&break=strip.3.seized',
    beside: '.side .yarn.second[d^="M"]',
  },
]

/**
 * Moves the slider by less than half a needle, again and again, and lets each be drawn. Gives for each how long the input
 * and its picture kept the page, by the clock in ms; marks the inputs for a trace.
 */
const moveOn = (page: Page, inputs: number): Promise<number[]> =>
  page.locator('.carriage-slider').evaluate(async (slider, times) => {
    if (!(slider instanceof HTMLInputElement)) throw new Error('no slider')
    const { port1, port2 } = new MessageChannel()
    const frame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done))
    const took: number[] = []
    await frame()
    for (let n = 0; n < times; n++) {
      performance.mark(`input ${n}`)
      // Asked for before the input, so that it comes before the page's own drawing. A message sent then arrives once
      // the picture is made.
      const made = new Promise<number>((done) => {
        requestAnimationFrame(() => {
          const began = performance.now()
          port1.onmessage = () => {
            done(performance.now() - began)
          }
          port2.postMessage(null)
        })
      })
      const start = performance.now()
      slider.value = String(2 + n * 0.45)
      slider.dispatchEvent(new Event('input', { bubbles: true }))
      const input = performance.now() - start
      took.push(input + (await made))
      await frame()
    }
    performance.mark(`input ${times}`)
    return took
  }, inputs)

for (const { name, address, beside } of pages)
  test(`a slider input is drawn in little time: ${name}`, async ({ page, browser }) => {
    test.slow()
    await page.goto(address)
    await expect(page.locator('.machine[data-live]')).toBeVisible()
    await drawn(page)
    if (beside !== '') await expect(page.locator(beside).first()).toBeAttached()
    const carriage = page.locator('.drawing:not([hidden]) svg:visible .map-carriage')
    const before = await carriage.getAttribute('transform')
    const session = await page.context().newCDPSession(page)
    for (const { slowed, inputs, part, name: partName, most } of speeds) {
      await session.send('Emulation.setCPUThrottlingRate', { rate: slowed })
      const pictures = await moveOn(page, inputs)
      const late = pictures.filter((time) => time > picture).length
      note(
        `${name}: input and picture by the clock${slowed === 1 ? '' : `, ${slowed} times slower`}; median, 95th percentile, most`,
        `${spread(pictures)}; ${late} of ${inputs} over ${picture.toFixed(1)} ms`,
        `${partName} below ${most.toFixed(1)} ms`,
        shareOf(pictures, part) < most,
      )
    }
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
    await browser.startTracing(page, { categories: [...traceCategories] })
    await moveOn(page, 300)
    const scripting = scriptingTimes((await browser.stopTracing()).toString())
    expect(scripting).toHaveLength(300)
    expect(shareOf(scripting, 0.5)).toBeGreaterThan(0)
    note(
      `${name}: scripting of an input; median, 95th percentile, most`,
      spread(scripting),
      `95th percentile below ${mostScripting} ms`,
      shareOf(scripting, 0.95) < mostScripting,
    )
    expect(await carriage.getAttribute('transform')).not.toBe(before)
  })
