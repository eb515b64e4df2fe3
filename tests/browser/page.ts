import { gzipSync } from 'node:zlib'
import { test as base, expect, type Locator, type Page, type Response } from '@playwright/test'
import { layouts } from '@/drawings/chain/layout.ts'
import { mapX } from '@/drawings/chain/map-band.ts'
import { px } from '@/drawings/shared/paths.ts'
import { type Moment, momentOf } from './model.ts'

export { expect, type Locator, type Page } from '@playwright/test'

/** Collects what no page of the site may do: complain on the console, fail, or ask another host for anything. */
export const watch = (page: Page, home: string): string[] => {
  const wrongs: string[] = []
  page.on('console', (message) => {
    // The runner's own words, where it keeps a page without a worker.
    if (message.text() === 'Service Worker registration blocked by Playwright') return
    if (['error', 'warning'].includes(message.type())) wrongs.push(`console: ${message.text()}`)
  })
  page.on('pageerror', (error) => wrongs.push(`error: ${error.message}`))
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url())
    if (protocol !== 'data:' && origin !== new URL(home).origin) wrongs.push(`request: ${request.url()}`)
  })
  return wrongs
}

/** A page that stays open from test to test, and what it did on the way that no page may do. */
interface LastingPage {
  readonly page: Page
  readonly wrongs: string[]
  /** Takes away what is kept for the page from visit to visit. */
  readonly forget: () => Promise<unknown>
}

/**
 * Tests whose page must keep quiet. Motion is reduced unless a test says else, so that nothing moves by itself.
 * The lasting page is opened only where a test asks for it, by `lastingTest`.
 */
export const test = base.extend<{ motion: 'reduce' | 'no-preference' }, { lasting: LastingPage }>({
  motion: ['reduce', { option: true }],
  page: async ({ page, baseURL, motion }, use) => {
    const wrongs = watch(page, baseURL ?? '')
    await page.emulateMedia({ reducedMotion: motion })
    await use(page)
    expect(wrongs).toEqual([])
  },
  lasting: [
    async ({ browser }, use, { project }) => {
      const { baseURL = '' } = project.use
      const context = await browser.newContext({ baseURL, serviceWorkers: 'block', reducedMotion: 'reduce' })
      const page = await context.newPage()
      const devtools = await context.newCDPSession(page)
      const kept = { origin: new URL(baseURL).origin, storageTypes: 'local_storage' }
      const forget = (): Promise<unknown> => devtools.send('Storage.clearDataForOrigin', kept)
      await use({ page, wrongs: watch(page, baseURL), forget })
      await context.close()
    },
    { scope: 'worker' },
  ],
})

/**
 * Tests on a page that stays open from test to test, in the window of a desk: all that a runner has share one, which
 * takes half the time of a new one for each. Nothing that a test keeps there, routes or resizes is left to the next; a
 * test that adds scripts to its page, gives it rights, or weighs what it fetches needs `test`.
 */
export const lastingTest = test.extend({
  page: async ({ lasting: { page, wrongs, forget } }, use) => {
    wrongs.length = 0
    await page.setViewportSize({ width: 1280, height: 720 })
    await use(page)
    await page.unrouteAll()
    await page.mouse.move(0, 0)
    await page.evaluate(() => (location.protocol === 'about:' ? undefined : sessionStorage.clear()))
    // Elsewhere: from one state of a page to another only the fragment would change, and the page stay.
    await page.goto('about:blank')
    await forget()
    await page.emulateMedia({ media: null, colorScheme: null, reducedMotion: 'reduce' })
    expect(wrongs).toEqual([])
  },
})

/** Counts from now on how far what is on the page is pushed about while it comes to life. */
export const watchShifts = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    let shift = 0
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) shift += Number(Reflect.get(entry, 'value'))
      Object.assign(window, { shift })
    }).observe({ type: 'layout-shift', buffered: true })
  })

/** The layout shift so far, as web.dev counts it. */
export const shiftOf = (page: Page): Promise<number> =>
  page.evaluate(() => Number(Reflect.get(window, 'shift') ?? 0))

/** Waits until what has changed is drawn. */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))))

/** What the loop below takes on two cores with nothing else running, in ms: 1 December 2026, the machine of MEASURED.md. */
const quietLoop = 60

/**
 * How many times as long as on that machine a loop that makes many small objects takes on the page now, at least 1. Limits
 * by the clock are for that machine: how slow another is, or what else it does, is none of the page's.
 */
export const slowness = (page: Page): Promise<number> =>
  page.evaluate((quiet) => {
    const times = Array.from({ length: 5 }, () => {
      const start = performance.now()
      let sum = 0
      for (const { n } of Array.from({ length: 3e5 }, (_, count) => ({ n: count, more: [count] })))
        sum += Math.sqrt(n)
      return sum > 0 ? performance.now() - start : 0
    })
    return Math.max(1, times.sort((one, other) => one - other)[2]! / quiet)
  }, quietLoop)

/** Waits for so many pictures of the screen, of which there are 60 in a second: time for what must not happen. */
export const frames = (page: Page, count: number): Promise<void> =>
  page.evaluate(async (more) => {
    for (let n = 0; n < more; n++) await new Promise(requestAnimationFrame)
  }, count)

/** What is read, once two readings a tenth of a second apart are the same. */
export const atRest = async <T>(read: () => Promise<T>): Promise<T> => {
  let last = await read()
  await expect
    .poll(
      async () => {
        const before = last
        last = await read()
        return last === before
      },
      { intervals: [100] },
    )
    .toBe(true)
  return last
}

/** Where the map shows the carriage in the state of a link's text, as either shape of the picture writes it. */
const onMap = (state: string): RegExp => {
  const { x } = momentOf(state).frame
  const places = Object.values(layouts).map((layout) => px(mapX(layout, x)))
  return new RegExp(`^translate\\((${places.join('|')}) 0\\)$`)
}

/** Opens the home page on the state of a link's text, or as it is, and waits until scripts have brought it to life. */
export const open = async (page: Page, state = ''): Promise<void> => {
  await page.goto(state === '' ? './' : `./#${state}`)
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await drawn(page)
  // The figure comes in a file of its own; until it is here, the built picture is there.
  if (state.includes('='))
    await expect(picture(page).locator('.map-carriage')).toHaveAttribute('transform', onMap(state))
}

/** Edits the address to the state of a link's text. */
export const edit = async (page: Page, state: string): Promise<void> => {
  await page.evaluate((hash) => {
    const read = new Promise((done) => addEventListener('hashchange', done, { once: true }))
    location.hash = hash
    return read.then(() => undefined)
  }, state)
  await drawn(page)
}

/** The picture that is shown, of the two shapes. */
export const picture = (page: Page): Locator => page.locator('.drawing svg').filter({ visible: true })

/** All that a picture holds, whatever the order in which the attributes came. */
export const outline = (svg: Element): string =>
  [...svg.querySelectorAll('*')]
    .map((element) => {
      const attributes = [...element.attributes]
        .filter(({ name, value }) => value !== '' && !(name === 'display' && value === 'inline'))
        .map(({ name, value }) => `${name}="${value}"`)
        .sort()
      const text = element.childElementCount === 0 ? element.textContent : ''
      return `${element.nodeName} ${attributes.join(' ')} ${text}`
    })
    .join('\n')

/** A part of the picture by its id; of a part drawn in several pieces, the first. */
export const part = (page: Page, id: string): Locator =>
  picture(page).locator(`[data-part="${id}"]:not([display="none"])`).first()

/** Has what is yet to be written into the address written at once, as when the reader leaves. */
export const addressWritten = async (page: Page): Promise<void> => {
  await drawn(page)
  await page.evaluate(() => dispatchEvent(new Event('beforeunload')))
}

/** The state that the address names, once it has followed what happened. */
export const settled = async (page: Page): Promise<Moment> => {
  await addressWritten(page)
  return momentOf(new URL(page.url()).hash.slice(1))
}

/** The middle of an element, in pixels of the page. */
export const middle = async (element: Locator): Promise<{ x: number; y: number }> => {
  const box = await element.boundingBox()
  if (!box) throw new Error('the element is not in the page')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Clicks a part in the drawing, at its middle. */
export const click = async (page: Page, id: string): Promise<void> => {
  const { x, y } = await middle(part(page, id))
  await page.mouse.click(x, y)
}

/** How many pixels of the page a needle's spacing takes. */
export const needlePixels = async (page: Page): Promise<number> => {
  const width = await picture(page)
    .locator('.carriage')
    .evaluate((element) => element.getBoundingClientRect().width)
  return width / 21
}

/** A corner of the carriage that a hand can take hold of. */
export const grip = async (page: Page): Promise<{ x: number; y: number }> => {
  const box = await picture(page).locator('.carriage').boundingBox()
  if (!box) throw new Error('the carriage is not in the picture')
  return { x: box.x + box.width * 0.15, y: box.y + box.height - 8 }
}

/** Drags with the mouse from a place by so many pixels to the right. */
export const drag = async (
  page: Page,
  from: { x: number; y: number },
  ...by: readonly number[]
): Promise<void> => {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  for (const way of by) await page.mouse.move(from.x + way, from.y, { steps: 6 })
  await page.mouse.up()
}

/** Watches what scripts a page fetches from now on; gives how many there are and their bytes together, gzipped. */
export const watchScripts = (
  page: Page,
  isCounted: (url: string) => boolean = () => true,
): (() => Promise<{ files: number; bytes: number }>) => {
  const scripts = new Map<string, Response>()
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script' && isCounted(response.url()))
      scripts.set(response.url(), response)
  })
  return async () => {
    const files = await Promise.all([...scripts.values()].map((response) => response.body()))
    expect(files.length).toBeGreaterThan(0)
    return { files: files.length, bytes: files.reduce((sum, text) => sum + gzipped(text), 0) }
  }
}

/** Bytes of a text as a host sends it, gzipped. */
export const gzipped = (text: Buffer | string): number => gzipSync(text, { level: 9 }).length
