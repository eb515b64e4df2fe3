import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { unzipSync } from 'fflate'
import { pack } from '@/integrations/pack/pack.ts'
import { dist } from '@/setup/paths.mjs'
import { drag, drawn, expect, grip, type Page, picture, test as base } from './page.ts'
import { printOn } from './printed.ts'

/** Tests on the archive, unpacked as on a stick. */
const test = base.extend<object, { stick: string }>({
  stick: [
    // Playwright reads which fixtures are wanted from here.
    async ({}, use) => {
      const folder = mkdtempSync(join(tmpdir(), 'stick with a space-'))
      for (const [name, bytes] of Object.entries(unzipSync(await pack(dist, 'test')))) {
        const file = join(folder, name)
        mkdirSync(dirname(file), { recursive: true })
        writeFileSync(file, bytes)
      }
      await use(pathToFileURL(folder).href)
      rmSync(folder, { recursive: true })
    },
    { scope: 'worker', timeout: 60_000 },
  ],
  baseURL: async ({ stick }, use) => use(`${stick}/site/`),
})

const live = async (page: Page): Promise<void> => {
  await expect(page.locator('[data-live]').first()).toBeVisible()
  await drawn(page)
}

test('opens by its start page, and the carriage follows a hand', async ({ page, stick }) => {
  await page.goto(`${stick}/START-HERE.html`)
  await expect(page).toHaveURL(/\/site\/index\.html/)
  await live(page)
  const before = await page.locator('.carriage-readout').innerText()
  await picture(page).scrollIntoViewIfNeeded()
  await drag(page, await grip(page), 120)
  await expect(page.locator('.carriage-readout')).not.toHaveText(before)
  await expect(page).toHaveURL(/\/site\/index\.html#.*at=/)
  const ways = page.getByRole('navigation', { name: 'Site' })
  await ways.getByRole('link', { name: 'Find a fault', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Find')
})

test('leads through a chapter, asks its questions, and opens its class view', async ({ page }) => {
  await page.goto('./chapters/the-hold/index.html')
  await live(page)
  await page.locator('.step-forward').click()
  await expect(page).toHaveURL(/index\.html\?step=/)
  await expect(page.locator('.step-name')).toContainText('Step 2 of')
  await page.locator('#questions').scrollIntoViewIfNeeded()
  await expect(page.locator('.quiz[data-live]')).toBeVisible()

  await page.goto('./class/the-hold/index.html')
  await live(page)
  await page.keyboard.press('PageDown')
  await expect(page).toHaveURL(/\/class\/the-hold\/index\.html\?.*step=/)
})

test('finds a word, and computes in the background what may be wrong', async ({ page }) => {
  await page.goto('./search/index.html')
  await page.getByRole('searchbox').fill('pawl')
  await page.locator('.results a').first().click()
  await expect(page).toHaveURL(/index\.html\?step=/)
  await live(page)

  await page.goto('./find/index.html#pass=1.right.500.wL94-R99x8')
  await expect(page.locator('.answer h3').first()).toHaveText('Strip 3 seized')
  await page.locator('.answer a').filter({ visible: true }).first().click()
  await expect(page).toHaveURL(/\/faults\/[a-z0-9-]+\/index\.html/)
  await live(page)
})

test('opens a case, and gives its link the site’s address, or says that it stays here', async ({ page }) => {
  await page.goto('./case/index.html?make#break=strip.3.seized')
  await live(page)
  await expect(page.locator('.case-parts')).toContainText('Strip 3')
  const site = await page.locator('html').getAttribute('data-pack-site')
  const words = page.locator('.case-code p')
  await page.getByRole('button', { name: 'Copy link' }).click()
  if (site === null) {
    await expect(words).toContainText('no phone could follow the link')
    await expect(page.locator('.case-said')).toContainText('It works on this device only')
  } else {
    await expect(words).toContainText('Point a phone’s camera at the code')
    await expect(page.locator('.case-link-text')).toHaveValue(`${site}case/#break=strip.3.seized&end=1`)
  }
  await page.getByRole('link', { name: 'See it move' }).click()
  await expect(page).toHaveURL(/\/site\/index\.html#break=strip\.3\.seized/)
})

test('keeps a machine from the workbench as a job, goes on noting what is seen, and makes its owner’s page', async ({
  page,
}) => {
  await page.goto('./workbench/index.html#break=strip.3.seized')
  await live(page)
  await page.getByRole('link', { name: 'Keep as a job' }).click()
  await expect(page).toHaveURL(/\/job\/index\.html#\d+\.intake$/)
  await page.getByLabel('The machine, in your words').fill('Blue machine')
  await page.getByRole('link', { name: 'Next: Look' }).click()
  await page.getByRole('link', { name: 'Note what you see' }).click()
  await expect(page.locator('.find-job')).toContainText('Blue machine')
  await page.getByRole('link', { name: 'Back to the job' }).click()
  await expect(page).toHaveURL(/\/job\/index\.html#\d+\.look$/)
  await expect(page.locator('.look-next')).not.toBeEmpty()
  await page.reload()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Blue machine')
  await page.getByRole('link', { name: 'Hand over' }).click()
  await page.getByRole('link', { name: 'Make the owner’s page from this' }).click()
  await expect(page).toHaveURL(/\/case\/index\.html\?make#.*break=strip\.3\.seized/)
  await expect(page.locator('.case-parts')).toContainText('Strip 3')
})

test('saves the sheet to punch, whose maker comes only when it is asked for', async ({ page }) => {
  await page.goto('./workbench/index.html#card=x.gAAA')
  await live(page)
  await page.getByRole('button', { name: 'Own card' }).click()
  await page.locator('.card-editor').getByRole('button', { name: 'Sheet to punch', exact: true }).click()
  const saved = page.waitForEvent('download')
  await page.getByRole('dialog').getByRole('button', { name: 'Save as PDF' }).click()
  expect(readFileSync(await (await saved).path(), 'latin1').slice(0, 5)).toBe('%PDF-')
})

/** Opens a part to be printed from the stick and from the server, and waits until each says that all of it is there. */
const openBoth = async (page: Page, served: Page, part: string): Promise<void> => {
  await page.goto(`./paper/${part}/index.html`)
  await served.goto(`${test.info().project.use.baseURL ?? ''}paper/${part}/`)
  const ready: (string | null)[] = []
  for (const one of [page, served]) {
    const said = one.locator('.paper-said')
    await expect(said).toHaveText(/^Ready to print: all [1-9]\d* pictures are here\.$/, { timeout: 60_000 })
    ready.push(await said.textContent())
  }
  expect(ready[0]).toBe(ready[1])
}

const served = test.extend<{ served: Page }>({
  served: async ({ browser }, use) => {
    const page = await browser.newPage({ serviceWorkers: 'block', reducedMotion: 'reduce' })
    await use(page)
    await page.close()
  },
})

served('gathers the handouts as the served site does, with all pictures', async ({ page, served }) => {
  await openBoth(page, served, 'handouts')
})

/** What is to be printed, as text: each element with its words and its place on paper, and of a picture its own size. */
const sheetsOf = async (page: Page): Promise<string> => {
  await page.emulateMedia({ media: 'print' })
  return page.evaluate(() => {
    const pictureOf = (image: HTMLImageElement): string =>
      `${image.alt} ${image.naturalWidth} × ${image.naturalHeight}`
    return [...document.querySelectorAll('.sheet, .sheet *')]
      .map((element) => {
        const { left, top, width, height } = element.getBoundingClientRect()
        const place = [left, top, width, height].map(Math.round).join(' ')
        const words = element.childElementCount === 0 ? element.textContent : ''
        return `${element.nodeName} ${place}: ${element instanceof HTMLImageElement ? pictureOf(element) : words}`
      })
      .join('\n')
  })
}

// The handouts are a part of it. How it falls on pages is looked at on the served site, in paper.spec.ts.
served('prints the pack as the served site does, with all pages and pictures', async ({ page, served }) => {
  test.slow()
  await openBoth(page, served, 'pack')
  const sheets = await sheetsOf(page)
  expect(sheets.split('\n').length).toBeGreaterThan(2000)
  expect(sheets).not.toContain(' 0 × 0')
  expect(sheets).toBe(await sheetsOf(served))
  const [first] = await printOn(page, 'A4', '1')
  expect(first?.words).toContain('Class pack')
})
