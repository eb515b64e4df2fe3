import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { dist } from '@/setup/paths.mjs'
import { type OwnServer, serveSite } from './own-server.ts'
import { expect, type Page, test as base } from './page.ts'

/** Tests with the worker, on a server that they may end. */
const test = base.extend<{ server: OwnServer }>({
  // Playwright reads which fixtures are wanted from here.
  server: async ({}, use) => {
    const server = await serveSite(`/${process.env['BASE'] ?? ''}/`.replace(/\/+/g, '/'))
    await use(server)
    await server.end()
  },
  baseURL: async ({ server }, use) => use(server.address),
})
test.use({ serviceWorkers: 'allow' })

const state = (page: Page) => page.locator('.keeping-state')

/** Opens the page that shows what is kept, and waits until the worker is active. */
const openKeeping = async (page: Page): Promise<void> => {
  await page.goto('./offline/')
  await expect(state(page)).toContainText('Kept on this device', { timeout: 15_000 })
}

const keepWhole = async (page: Page): Promise<void> => {
  await openKeeping(page)
  await page.getByRole('button', { name: /^Keep the whole site/ }).click()
}

/** Waits until the open page is kept: it is kept last, so that once it is there, its parts are. */
const pageKept = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready
    const address = new URL(location.href)
    while (!(await caches.match(address, { ignoreSearch: true }))) await new Promise(requestAnimationFrame)
  })

test('one visit keeps the page that was opened, and those that links from others open', async ({
  page,
  server,
}) => {
  await page.goto('./chapters/the-hold/')
  const still = page.locator('.step img').first()
  await pageKept(page)
  await server.end()

  await page.goto('./chapters/the-hold/?step=caught')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Caught, or let go')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  if ((await still.count()) > 0) await expect(still).toHaveJSProperty('complete', true)
  await page.goto('./case/#break=strip.3.seized&end=1')
  await expect(page.locator('.case-parts')).toContainText('Strip 3')

  await page.goto('./faults/strip-seized/')
  await expect(page.getByRole('status').first()).toContainText('is not kept on this device')

  // A browser complains of a page that is not there, which the other tests' pages must never make it do.
  const stranger = await page.context().newPage()
  expect((await stranger.goto('./faults/no-such-fault/'))?.status()).toBe(404)
  await expect(stranger.getByRole('heading', { level: 1 })).toHaveText('There is no page at this address')
})

test('one visit keeps the run of all handouts, with their pictures', async ({ page, server }) => {
  const sheets = page.locator('.sheet[data-from]')
  const here = page.locator('.sheet[data-from][data-here]')
  await page.goto('./paper/handouts/')
  const count = await sheets.count()
  expect(count).toBeGreaterThan(8)
  await expect(here).toHaveCount(count)
  await pageKept(page)
  await page.evaluate(async () => {
    for (const { src } of document.querySelectorAll<HTMLImageElement>('.handout-picture img'))
      while (!(await caches.match(src, { ignoreSearch: true }))) await new Promise(requestAnimationFrame)
  })
  await server.end()

  await page.reload()
  await expect(here).toHaveCount(count)
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', '')
  })
  await page.getByRole('button', { name: 'Print' }).click()
  await expect(page.locator('body[data-printed]')).toBeAttached()
  const widths = await page
    .locator('.handout-picture img')
    .evaluateAll((images) => images.map((image) => (image as HTMLImageElement).naturalWidth))
  expect(widths.length).toBeGreaterThan(70)
  expect(widths.filter((width) => width === 0)).toEqual([])
})

test('the whole site is kept on a press, opens without its server, and is removed again', async ({
  page,
  server,
}) => {
  await keepWhole(page)
  await expect(state(page)).toContainText('The whole site is kept on this device', { timeout: 20_000 })
  await server.end()

  for (const [address, title] of [
    ['./', 'Why does a knitting machine miss every eighth needle?'],
    ['./chapters/rockers-and-strips/', 'Rockers and strips'],
    ['./faults/belt-slack/', 'Belt slack'],
  ] as const) {
    await page.goto(address)
    await expect(page.locator('.machine[data-live]')).toBeVisible()
    await page.reload()
    await expect(page.getByRole('heading', { level: 1 })).toContainText(title)
    await expect(page.locator('.machine[data-live]')).toBeVisible()
  }
  await page.goto('./case/#title=Mrs%20Hale&break=strip.3.seized&end=1')
  await expect(page.locator('.case-parts')).toContainText('Strip 3')
  await page.goto('./job/')
  await page.getByRole('button', { name: 'Look at an example' }).click()
  await page.getByRole('link', { name: 'Next: Look' }).click()
  await expect(page.locator('.look-whole')).toContainText('Strips 3 and 6 no longer move')
  await page.getByRole('link', { name: 'Next: Decide' }).click()
  await expect(page.locator('.decide-serves')).toContainText('Shown right')
  await page.goto('./search/')
  await page.getByRole('searchbox').fill('pawl')
  await page.locator('.results a').first().click()
  await expect(page.locator('.machine, .glossary').first()).toBeVisible()

  await page.goto('./offline/')
  await page.getByRole('button', { name: 'Remove it' }).click()
  await expect(state(page)).toContainText('The pages you had kept are removed')
  await expect(page.getByRole('button', { name: /^Keep the whole site/ })).toBeVisible()
})

test('says so where there is no room for the whole site', async ({ page, server }) => {
  await openKeeping(page)
  const devtools = await page.context().newCDPSession(page)
  await devtools.send('Storage.overrideQuotaForOrigin', {
    origin: new URL(server.address).origin,
    quotaSize: 6_000_000,
  })
  await page.getByRole('button', { name: /^Keep the whole site/ }).click()
  await expect(state(page)).toContainText('There is no room left for the rest of it', { timeout: 20_000 })
})

test('says so where there is no room from the start, and works with the network', async ({
  page,
  server,
}) => {
  const devtools = await page.context().newCDPSession(page)
  const { origin } = new URL(server.address)
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 100_000 })
  await page.goto('./offline/')
  await expect(state(page)).toContainText('This browser keeps nothing here', { timeout: 15_000 })
  await expect(state(page)).toContainText('there may be no room left')
  await page.goto('./faults/strip-seized/')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
})

const first = readFileSync(join(dist, 'glossary/index.html'))
const second = first.toString().replace('<h1>Glossary</h1>', '<h1>Glossary, second edition</h1>')
const hash = (text: string | Buffer): string => createHash('sha256').update(text).digest('base64')

/** The site with one page changed, as its next version would have it. */
const secondEdition = (name: string, text: Buffer): Buffer | string => {
  if (name === 'glossary/index.html') return second
  return name === 'sw.js' ? text.toString().replace(hash(first), hash(second)) : text
}

test('a new version is offered, waits until it is asked for, and leaves other tabs as they are', async ({
  page,
  server,
}) => {
  const heading = (tab: Page) => tab.getByRole('heading', { level: 1 })
  const offer = (tab: Page) => tab.getByRole('button', { name: 'Use the new version' })
  await openKeeping(page)
  await page.goto('./glossary/')
  const other = await page.context().newPage()
  await other.goto(`${server.address}chapters/the-hold/`)
  await expect(other.locator('.machine[data-live]')).toBeVisible()
  await other.evaluate(() => (document.body.dataset.mark = 'mine'))

  server.change(secondEdition)
  await page.reload()
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update())
  await expect(offer(page)).toBeVisible()
  await page.getByRole('button', { name: 'Later' }).click()
  await expect(offer(page)).toBeHidden()

  await page.goto('./class/the-hold/')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await expect(offer(page)).toBeHidden()

  await page.goto('./glossary/')
  await expect(heading(page)).toHaveText('Glossary')
  await offer(page).click()
  await expect(heading(page)).toHaveText('Glossary, second edition')
  await expect(offer(page)).toBeHidden()

  // The other tab is left as it is, and has the parts of its own version that it asks for only now.
  expect(await other.evaluate(() => document.body.dataset.mark)).toBe('mine')
  await other.getByRole('heading', { name: 'Questions' }).scrollIntoViewIfNeeded()
  await expect(other.locator('.quiz[data-live], .quiz form').first()).toBeVisible()
  await server.end()
  await other.goto(`${server.address}glossary/`)
  await expect(heading(other)).toHaveText('Glossary, second edition')
})
