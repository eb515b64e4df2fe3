import { faultKindNames } from '@/mechanism/fault-kinds.ts'
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { axeFinds, axeFindsLight } from './axe.ts'
import {
  expect,
  middle,
  shiftOf,
  watchScripts,
  watchShifts,
  test as freshTest,
  lastingTest as test,
} from './page.ts'

const chapters = readdirSync(fileURLToPath(new URL('../../content/chapters/', import.meta.url)))
  .sort()
  .map((name) => `chapters/${name.replace(/^\d+-(.*)\.mdx$/, '$1')}/`)
const faults = readdirSync(fileURLToPath(new URL('../../content/faults/', import.meta.url)))
  .sort()
  .map((name) => `faults/${name.replace('.md', '')}/`)
const pages = [
  '',
  'chapters/',
  'faults/',
  'glossary/',
  'true-of-every-machine/',
  'sources/',
  'search/',
  'workbench/',
  'case/',
  'find/',
  'find/test-card/',
  'offline/',
  'licences/',
  'teach/',
  'paper/',
  'paper/fault-chart/',
  'paper/worksheets/',
  'class/the-hold/',
  'class/the-hold/speaker/',
  faults[0]!,
  faults[20]!,
  ...chapters,
]

for (const address of chapters)
  freshTest(`${address} opens with at most 70 kB of scripts, and nothing jumps`, async ({ page }) => {
    const scripts = watchScripts(page)
    await watchShifts(page)
    await page.goto(`./${address}`)
    await expect(page.locator('.chapter[data-live]')).toBeVisible()
    await page.waitForLoadState('networkidle')
    const { files, bytes } = await scripts()
    console.log(`${address} ${(bytes / 1000).toFixed(1)} kB in ${files} files`)
    expect(bytes).toBeLessThanOrEqual(70_000)
    expect(await shiftOf(page)).toBeLessThan(0.02)
  })

/** Every page of the built site, and the first of each kind. */
const built = readdirSync(fileURLToPath(new URL('../../dist/', import.meta.url)), { recursive: true })
  .map((name) => String(name).replaceAll('\\', '/'))
  .filter((name) => /(^|\/)index\.html$/.test(name))
  .map((name) => name.replace(/index\.html$/, ''))
  .sort()
const kindOf = (address: string): string => address.replace(/(?<=\/)[^/]+\/(?=$|speaker)/, '*/')
const firstOfKind = new Set([...Map.groupBy(built, kindOf).values()].map(([first]) => first))

freshTest('axe is asked of every page there is', () => {
  expect(built.length).toBeGreaterThanOrEqual(pages.length)
})

for (const address of built)
  test(`axe finds nothing on ./${address}, light or dark, and it doesn’t scroll sideways on a small phone`, async ({
    page,
  }) => {
    await page.goto(`./${address}`)
    // What scripts lay out is as it was built until then.
    if (/^(chapters|class)\/./.test(address))
      await expect(page.locator(':is(.chapter, .class-view, .speaker-view)[data-live]')).toBeVisible()
    // A kind's dark colours, and its drawing, are looked at once; each chapter has a drawing of its own.
    // Of sheets that follow each other, the first: the others hold what other pages hold.
    const without = ['.sheet ~ .sheet', ...(kindOf(address) === 'chapters/*/' ? [] : ['.drawing svg'])]
    const found = firstOfKind.has(address)
      ? await axeFinds(page, ['.sheet ~ .sheet'])
      : await axeFindsLight(page, without)
    expect(found).toEqual([])
    await page.setViewportSize({ width: 320, height: 640 })
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  })

for (const [n, address] of faults.entries())
  if (n % 6 === 0)
    test(`${address} shows the fault on the machine, and what parts it from others`, async ({ page }) => {
      await page.goto(`./${address}`)
      await expect(page.locator('.machine[data-live]')).toBeVisible()
      await expect(page.locator('.chip')).toHaveCount(1)
      await expect(page.locator('.looks [data-wrong="true"]').first()).toBeVisible()
      for (const heading of ['How it shows', 'What it is confused with', 'Check it from outside', 'Mend it'])
        await expect(page.getByRole('heading', { name: heading })).toBeVisible()
      await expect(page.locator('.caution').first()).toBeVisible()
    })

test('faults are found by what one sees', async ({ page }) => {
  expect(faults).toHaveLength(faultKindNames.length)
  await page.goto('./faults/')
  await expect(page.locator('.sight li a')).toHaveCount(faults.length)
  await page
    .locator('.sight', { hasText: 'Every eighth needle' })
    .getByRole('link', { name: 'Strip seized' })
    .click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Strip seized')
  await expect(page.locator('.needle[data-mark="missed"]').first()).toBeAttached()
})

test('the search finds a part, a fault and a step, and a found step opens', async ({ page }) => {
  await page.goto('./search/')
  const results = page.locator('.results > li')
  await page.getByRole('searchbox').fill('seized')
  await expect(results.first()).toBeVisible()
  await expect(page.locator('.results')).toContainText('Strip seized')
  await page.getByRole('searchbox').fill('turn mark')
  const step = results.filter({ hasText: /Chapter \d+/ }).first()
  const title = await step.locator('a').textContent()
  await step.locator('a').click()
  await expect(page.locator('.step[data-current] h2')).toHaveText(title ?? '')
  await page.goto('./search/?q=zzzzqq')
  await expect(page.locator('.count')).toContainText('Nothing found')
  await page.goto('./search/?q=' + encodeURIComponent('<img src=x onerror=alert(1)>'))
  await expect(page.locator('.search img')).toHaveCount(0)
})

freshTest('an address without a page says so, and leads to the search and home', async ({ context }) => {
  // A browser complains of a page that is not there, which no page of the other tests may make it do.
  const page = await context.newPage()
  expect((await page.goto('./chapters/no/such/page/?step=a#at=R8'))?.status()).toBe(404)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is no page at this address')
  expect(await axeFindsLight(page, [])).toEqual([])
  await page.setViewportSize({ width: 320, height: 640 })
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  await page.getByRole('searchbox').fill('seized')
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/\/search\/\?q=seized$/)
  await expect(page.locator('.results')).toContainText('Strip seized')
  await page.goBack()
  await page.getByRole('link', { name: 'the start of the site' }).click()
  await expect(page.locator('.machine[data-live]')).toBeVisible()
})

test('the carriage can be dragged in the timing chart', async ({ page }) => {
  await page.goto('./chapters/the-sweep-and-the-belt/')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  const slider = page.locator('.carriage-slider')
  const before = Number(await slider.inputValue())
  const { x, y } = await middle(page.locator('[data-figure="timing"] svg[data-layout="wide"]'))
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 60, y, { steps: 6 })
  await page.mouse.up()
  const moved = Number(await slider.inputValue()) - before
  expect(moved).toBeGreaterThan(1)
  expect(moved).toBeLessThan(8)
})

test('a chapter offers its own faults first, and every fault on request', async ({ page }) => {
  await page.goto('./chapters/rockers-and-strips/')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  await page.getByText('Controls', { exact: true }).click()
  await page.locator('button.break').click()
  const kinds = page.locator('.breaker-list button[data-kind]')
  await expect(kinds.filter({ visible: true }).first()).toBeVisible()
  for (const kind of await kinds
    .filter({ visible: true })
    .evaluateAll((all) => all.map((b) => (b as HTMLElement).dataset.kind)))
    expect(kind).toMatch(/^(strip|rocker|pin)\./)
  await page.getByRole('button', { name: 'Show every fault' }).click()
  await expect(kinds.filter({ visible: true })).toHaveCount(await kinds.count())
})

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false })

  freshTest(
    'a chapter shows every step’s picture, its words, and the questions with their answers folded',
    async ({ page }) => {
      await page.goto('./chapters/feeler-pins/')
      const steps = await page.locator('.step').count()
      const stills = page.locator('.step .still > :is(img, svg)')
      await expect(stills).toHaveCount(steps)
      for (const still of await stills.all()) {
        await still.scrollIntoViewIfNeeded()
        // The machine's own picture is within one that has its words.
        const isImage = (await still.getAttribute('src')) !== null
        if (isImage)
          await expect
            .poll(() => still.evaluate((img) => (img as HTMLImageElement).naturalWidth))
            .toBeGreaterThan(100)
        else await expect(still.locator('image')).toHaveCount(1)
        expect((await still.getAttribute(isImage ? 'alt' : 'aria-label'))?.length).toBeGreaterThan(30)
      }
      await expect(page.locator('.quiz details')).not.toHaveCount(0)
      await expect(page.locator('.play')).toBeHidden()
    },
  )
})

test('a chapter prints with its figure as shown and no controls', async ({ page }) => {
  await page.goto('./chapters/rockers-and-strips/?step=three-share-one#at=R19&break=strip.3.seized')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  const figure = page.locator('.drawing:not([hidden]) svg[data-layout="wide"]')
  const missed = figure.locator('.needle[data-mark="missed"]').first()
  await expect(missed).toBeAttached()
  await page.emulateMedia({ media: 'print' })
  await expect(figure).toBeVisible()
  await expect(missed).toBeAttached()
  for (const name of ['.step-bar', '.carriage-control', '.more-controls', '.top'])
    await expect(page.locator(name)).toBeHidden()
  expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(20_000)
})
