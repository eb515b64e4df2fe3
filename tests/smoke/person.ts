import { expect } from 'vitest'
import type { Browser, Point } from './browser.ts'

/** What a person does on a page: each waits until it can be done. */
export interface Person {
  /** Opens an address of the site and waits until scripts have brought its main thing to life. */
  readonly open: (address: string) => Promise<void>
  /** Presses the first visible element of a selector that begins with these words. */
  readonly click: (selector: string, words?: string) => Promise<void>
  /** Goes through the page by Tab until an element of the selector has the focus. */
  readonly tabTo: (selector: string) => Promise<void>
  /** The words of the first visible element; of a field, its value. */
  readonly read: (selector: string) => Promise<string>
  /** Waits until an element reads as expected. */
  readonly reads: (selector: string, expected: string | RegExp) => Promise<void>
  readonly address: () => Promise<string>
  /** Complaints and failures since the page was opened. */
  readonly wrongs: () => Promise<string[]>
}

/**
 * Brings what is to be pressed into view.
 * @returns its middle; null where it is not there, something lies over it, or what has just opened still pushes it about
 */
const middleOf = (browser: Browser, selector: string, words: string): Promise<Point | null> =>
  browser.look(
    async (selector: string, words: string) => {
      const element = [...document.querySelectorAll(selector)].find((element) => {
        const name = element.getAttribute('aria-label') ?? element.textContent
        return element.getClientRects().length > 0 && name.trim().startsWith(words)
      })
      if (!element) return null
      element.scrollIntoView({ block: 'center', behavior: 'instant' })
      const before = element.getBoundingClientRect()
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      const { left, top, width, height } = element.getBoundingClientRect()
      const [x, y] = [left + width / 2, top + height / 2]
      const still = left === before.left && top === before.top
      return still && element.contains(document.elementFromPoint(x, y)) ? { x, y } : null
    },
    selector,
    words,
  )

/** Where something can be pressed, once it can. */
const within = async (browser: Browser, selector: string, words: string): Promise<Point> => {
  let place: Point | null = null
  const look = async (): Promise<boolean> => (place = await middleOf(browser, selector, words)) !== null
  await expect.poll(look, { message: `${selector} “${words}” can be pressed` }).toBe(true)
  return place!
}

export const personAt = (browser: Browser, home: string): Person => {
  const read = (selector: string): Promise<string> =>
    browser.look((selector: string) => {
      const element = [...document.querySelectorAll(selector)].find(
        (element) => element.getClientRects().length > 0,
      )
      if (!element) return ''
      return element instanceof HTMLInputElement
        ? element.value
        : element.textContent.replace(/\s+/g, ' ').trim()
    }, selector)

  return {
    open: async (address) => {
      await browser.open(new URL(address, home).href)
      const alive = (): Promise<boolean> =>
        browser.look(() => document.querySelector('main [data-live]') !== null)
      await expect.poll(alive, { message: `${address} comes to life` }).toBe(true)
    },
    click: async (selector, words = '') => browser.press(await within(browser, selector, words)),
    tabTo: async (selector) => {
      const there = (): Promise<boolean> =>
        browser.look((selector: string) => document.activeElement?.matches(selector) ?? false, selector)
      for (let presses = 0; presses < 80; presses += 1) {
        if (await there()) return
        await browser.key('Tab')
      }
      throw new Error(`Tab never comes to ${selector}`)
    },
    read,
    reads: async (selector, expected) => {
      const words = expect.poll(() => read(selector), { message: selector })
      await (typeof expected === 'string' ? words.toBe(expected) : words.toMatch(expected))
    },
    address: () => browser.look(() => location.href),
    wrongs: () => browser.look(() => Reflect.get(window, 'wrongs') as string[]),
  }
}
