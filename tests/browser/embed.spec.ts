import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { test } from '@playwright/test'
import { embeddedFigures } from '@/browser/embed-address.ts'
import { describeFrame } from '@/words/frame-description.ts'
import { momentOf } from './model.ts'
import { expect, type Page, test as siteTest, watchScripts } from './page.ts'

/** All JavaScript of an embedded figure as it comes to life, compressed, in bytes. */
const mostScript = 60_000

/** Somebody else's page, on another host: a frame with what its query names in it, and text that scrolls below. */
const hostPage = (src: string, height: string): string =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>Host</title><style>body{margin:0;height:4000px}</style>
   <iframe src="${src.replaceAll('&', '&amp;').replaceAll('"', '&quot;')}" title="Figure" width="100%" height="${height}" style="border:0"></iframe>`

let host: Server
let home = ''
test.beforeAll(async () => {
  host = createServer(({ url }, response) => {
    const query = new URL(url ?? '', 'http://x').searchParams
    response.writeHead(200, { 'Content-Type': 'text/html' })
    response.end(hostPage(query.get('src') ?? '', query.get('height') ?? '640'))
  })
  await new Promise<void>((done) => host.listen(0, '127.0.0.1', done))
  home = `http://127.0.0.1:${(host.address() as AddressInfo).port}/`
})
test.afterAll(() => {
  host.close()
})

/** Opens an address of the site in a frame of the other page, and waits until an embedded figure is alive there. */
const inFrame = async (
  page: Page,
  baseURL: string | undefined,
  address: string,
  height = 640,
): Promise<void> => {
  const src = new URL(address, baseURL).href
  await page.goto(`${home}?src=${encodeURIComponent(src)}&height=${height}`)
  if (address.startsWith('embed/'))
    await expect(page.frameLocator('iframe').locator('.embed[data-live]')).toBeVisible()
}

const state = 'pass=2&at=L12&break=strip.3.seized&own=1_presserLeft-1.1&note=Look+at+strip+3'

for (const figure of embeddedFigures)
  test(`${figure} works in another page with its slider and its sentence, and keeps nothing`, async ({
    page,
    baseURL,
  }) => {
    const scripts = watchScripts(page)
    await page.setViewportSize({ width: 320, height: 700 })
    await inFrame(page, baseURL, `embed/${figure}/`)
    const frame = page.frameLocator('iframe')
    await page.waitForLoadState('networkidle')
    const { bytes } = await scripts()
    console.log(`${figure}: ${(bytes / 1000).toFixed(1)} kB of scripts`)
    expect(bytes).toBeLessThanOrEqual(mostScript)

    await inFrame(page, baseURL, `embed/${figure}/?theme=dark#${state}`)
    // What a page has no picture of is not kept out of sight once it is drawn.
    if (figure !== 'scene')
      expect(
        await frame
          .locator('.drawing > svg > *')
          .first()
          .evaluate((drawn) => getComputedStyle(drawn).visibility),
      ).toBe('visible')
    await expect(frame.locator('.happening')).toHaveText(describeFrame(momentOf(state).frame))
    await expect(frame.locator('.notice')).toHaveText('')
    await expect(frame.locator('.link-note')).toHaveText('Note with this link: Look at strip 3')
    await expect(frame.locator('svg:visible text').first()).toBeVisible()
    for (const width of [320, 640, 1000]) {
      await page.setViewportSize({ width, height: 700 })
      const seen = await frame.locator('.embed').evaluate((root) => {
        const { bottom, right } = root.getBoundingClientRect()
        return {
          isInside: bottom <= innerHeight && right <= innerWidth,
          room: document.documentElement.scrollWidth - innerWidth,
          paper: getComputedStyle(document.body).backgroundColor,
          kept: [localStorage.length, sessionStorage.length, document.cookie].join(),
        }
      })
      expect(seen, `${width} wide`).toEqual({
        isInside: true,
        room: 0,
        paper: 'rgb(21, 24, 28)',
        kept: '0,0,',
      })
    }
    expect(await page.context().cookies()).toEqual([])
    expect(page.context().serviceWorkers()).toEqual([])
  })

/** Words of the picture that lie over each other: a line's box is a good deal higher than its letters. */
const wordsOver = (page: Page): Promise<string[]> =>
  page
    .frameLocator('iframe')
    .locator('.embed')
    .evaluate((root) => {
      const texts = [...root.querySelectorAll<SVGTextElement>('.drawing svg text')]
        .filter((text) => text.textContent.trim() !== '' && text.checkVisibility({ opacityProperty: true }))
        .filter((text) => !text.closest('[clip-path]'))
        .map((text) => ({ words: text.textContent, box: text.getBoundingClientRect() }))
      return texts.flatMap(({ words, box }, n) =>
        texts
          .slice(n + 1)
          .filter(
            ({ box: other }) =>
              Math.min(box.right, other.right) - Math.max(box.left, other.left) > 1 &&
              Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 0.45 * box.height,
          )
          .map((other) => `${words} | ${other.words}`),
      )
    })

for (const [width, height] of [
  [440, 420],
  [320, 480],
] as const)
  test(`no words of a figure lie over each other in a small frame: ${width} by ${height}`, async ({
    page,
    baseURL,
  }) => {
    await page.setViewportSize({ width, height: 700 })
    for (const figure of embeddedFigures) {
      await inFrame(page, baseURL, `embed/${figure}/#pass=14&at=R2&break=catch.R11.broken`, height)
      await expect(page.frameLocator('iframe').locator('svg:visible text').first()).toBeVisible()
      expect(await wordsOver(page), figure).toEqual([])
    }
  })

test('no key of the slider scrolls the page round the figure, nor where nothing has the keyboard', async ({
  page,
  baseURL,
}) => {
  await inFrame(page, baseURL, 'embed/chain/#at=L112')
  const slider = page.frameLocator('iframe').getByRole('slider', { name: 'Carriage' })
  const value = async (): Promise<number> => Number(await slider.inputValue())
  await slider.focus()
  const first = await value()
  for (const key of ['ArrowLeft', 'ArrowDown', 'Home', 'PageDown', 'Space']) await page.keyboard.press(key)
  expect(await value()).toBe(first)
  await page.keyboard.press('ArrowRight')
  expect(await value()).toBe(first + 0.25)
  await slider.evaluate((input: HTMLInputElement) => {
    input.blur()
  })
  for (const key of ['ArrowDown', 'ArrowUp', 'ArrowUp', 'PageDown', 'Space', 'End'])
    await page.keyboard.press(key)
  await expect(slider).toBeFocused()
  expect(await page.evaluate(() => scrollY)).toBe(0)
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('ArrowRight')
  expect(await page.evaluate(() => scrollY)).toBe(0)
})

test('a frame that is hidden, or without any size, shows what its address named meanwhile', async ({
  page,
  baseURL,
}) => {
  for (const figure of ['chain', 'scene', 'fabric']) {
    await inFrame(page, baseURL, `embed/${figure}/#pass=2&at=R12&break=strip.3.seized`)
    for (const [style, link] of [
      ['display: none', 'pass=2&at=L12&break=catch.L12.broken'],
      ['width: 0; height: 0; border: 0', 'pass=3&at=R30'],
    ] as const) {
      const change = (frame: HTMLElement | SVGElement, [look, hash]: readonly [string, string]): void => {
        frame.setAttribute('style', look)
        if (hash !== '' && frame instanceof HTMLIFrameElement)
          frame.src = frame.src.replace(/#.*/, `#${hash}`)
      }
      const frame = page.locator('iframe')
      await frame.evaluate(change, [style, link] as const)
      await frame.evaluate(change, ['height: 640px; border: 0', ''] as const)
      const inside = page.frameLocator('iframe')
      await expect(inside.locator('.happening'), figure).toHaveText(describeFrame(momentOf(link).frame))
      const picture = inside.locator('.drawing svg').filter({ visible: true })
      expect((await picture.boundingBox())?.width, figure).toBeGreaterThan(200)
    }
  }
})

test('what of an address can’t be read is said in a sentence each, and the colours follow the page round it', async ({
  page,
  baseURL,
}) => {
  await page.emulateMedia({ colorScheme: 'dark' })
  await inFrame(page, baseURL, 'embed/scene/?theme=pink&subject=needle.R900#break=strip.99.seized&view=moon')
  const frame = page.frameLocator('iframe')
  const notice = frame.locator('.notice')
  await expect(notice).toContainText("The fault “strip.99.seized” can't be read")
  await expect(notice).toContainText('The colours “pink” are not known')
  await expect(notice).toContainText('needle.R900')
  await expect(notice).toContainText('The link’s view is none of front')
  expect(await frame.locator('body').evaluate((body) => getComputedStyle(body).backgroundColor)).toBe(
    'rgb(21, 24, 28)',
  )
})

test('a bar leads out of a foreign frame to the page itself, and only there', async ({ page, baseURL }) => {
  const address = 'workbench/#at=R20&break=strip.3.seized'
  await inFrame(page, baseURL, address)
  const link = page.frameLocator('iframe').getByRole('link', { name: 'Open this page by itself' })
  await expect(link).toBeVisible()
  const opening = page.waitForEvent('popup')
  await link.click()
  const opened = await opening
  await expect(opened).toHaveURL(new URL(address, baseURL).href)
  await expect(opened.locator('.machine[data-live]')).toBeVisible()
  await expect(opened.locator('.framed')).toHaveCount(0)
  await inFrame(page, baseURL, 'embed/hold/')
  await expect(page.frameLocator('iframe').locator('.framed')).toHaveCount(0)
})

siteTest('the code of a figure shows it as it was, and says who can open it', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await page.goto('./chapters/rockers-and-strips/?step=taking-turns#at=R9&break=catch.R12.broken')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  const summary = page.locator('.more-controls summary')
  if (await summary.isVisible()) await summary.click()
  await page.getByRole('button', { name: 'Embed …' }).click()
  const dialog = page.getByRole('dialog', { name: 'Put it in your page' })
  await dialog.getByLabel('Colours').selectOption('dark')
  await dialog.getByRole('button', { name: 'Copy the code' }).click()
  await expect(dialog.getByRole('status')).toHaveText(/^The code is copied\. It works on this device only/)
  const code = await page.evaluate(() => navigator.clipboard.readText())
  const frame = await page.evaluate((html) => {
    const found = new DOMParser().parseFromString(html, 'text/html').querySelector('iframe')
    return { src: found?.src ?? '', title: found?.title, lazy: found?.loading, height: Number(found?.height) }
  }, code)
  expect(frame).toMatchObject({ title: 'Every Eighth Needle: Timing chart', lazy: 'lazy' })
  expect(frame.height).toBeGreaterThan(400)
  expect(new URL(frame.src).search).toContain('theme=dark')
  await dialog.getByRole('button', { name: 'Close' }).click()
  await expect(dialog).toHaveCount(0)
  const happening = await page.locator('.happening').textContent()
  await page.goto(frame.src)
  await expect(page.locator('.embed[data-live] .happening')).toHaveText(happening ?? '')
})

test('a machine that its address asks for is never seen as another one first', async ({ page }) => {
  const still = page.locator('.drawing svg image').filter({ visible: true })
  const words = page.locator('.happening')
  const asked = './embed/scene/?view=bed&subject=strip.3#at=R12&break=strip.3.seized'
  let letGo = (): void => {}
  const held = new Promise<void>((done) => (letGo = done))
  await page.route(/\/step-scene[.\w-]*\.js/, async (route) => {
    await held
    await route.continue()
  })
  await page.goto(asked)
  await expect(page.locator('.embed[data-live]')).toBeVisible()
  const frame = page.locator('.drawing svg').filter({ visible: true })
  const before = await frame.boundingBox()
  await expect(still).toHaveCount(0)
  letGo()
  await expect(
    page.locator('.drawing .scene-flag[data-subject="subject"]').filter({ visible: true }),
  ).toHaveText('strip 3')
  await expect(words).toBeVisible()
  expect(await frame.boundingBox()).toEqual(before)
})

test('a page whose scripts fail shows what is built into it all the same', async ({ page }) => {
  await page.route(/\.js$/, (route) => route.abort())
  await page.goto('./embed/scene/#at=R12&break=strip.3.seized')
  const still = page.locator('.drawing svg image').filter({ visible: true })
  await expect(still).toHaveCount(0)
  await expect(still).toHaveCount(1, { timeout: 8000 })
  await expect(page.locator('.happening')).toBeVisible()
})

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false })

  test('an embedded figure is a still picture with its sentence', async ({ page }) => {
    for (const figure of ['gates', 'scene']) {
      await page.goto(`./embed/${figure}/`)
      await expect(page.locator('.happening')).toHaveText(/\.$/)
      await expect(page.locator(':is(noscript img, .drawing svg:has(image))').first()).toBeVisible()
      await expect(page.locator('.carriage-slider')).toBeHidden()
    }
  })
})
