import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { goTo, kept, openExample, openJobs } from './jobs.ts'
import { expect, type Locator, type Page, test } from './page.ts'

/** A state of a page: what it is called, how one comes there, and the part of the page that is read out. */
interface Spoken {
  readonly name: string
  readonly open: (page: Page) => Promise<Locator>
}

const scene = async (page: Page, fragment: string): Promise<Locator> => {
  await page.goto('about:blank')
  await page.goto(`./embed/scene/${fragment}`)
  await expect(page.locator('.embed[data-live]')).toBeVisible()
  // Until it is drawn and described as its address says, the built picture is there, with a flag that nobody asked for.
  await expect(page.locator('.drawing[data-figure="scene"] svg image').filter({ visible: true })).toHaveCount(
    0,
  )
  await expect(page.locator('main')).not.toContainText('With the flag')
  return page.locator('main')
}

const parts = async (page: Page, fragment: string): Promise<Locator> => {
  await page.goto('about:blank')
  await page.goto(`./parts/${fragment}`)
  await expect(page.locator('.parts-bench[data-live]')).toBeVisible()
  return page.locator('.parts-figure')
}

/** The measuring page with the dip of the presser, moving left, entered; gives the field's item. */
const presser = async (page: Page, text: string): Promise<Locator> => {
  await page.goto('about:blank')
  await page.goto('./measure/')
  await expect(page.locator('.measure[data-live]')).toBeVisible()
  const item = page.locator('.measure-item').filter({
    has: page.getByRole('heading', { name: 'Dip of the presser, moving left', exact: true }),
  })
  await item.getByLabel('This machine').fill(text)
  await item.getByLabel('This machine').press('Tab')
  return item
}

const states: readonly Spoken[] = [
  {
    name: 'scene: a needle that is under the presser, with its slider and its sentence',
    open: (page) => scene(page, '#at=R8'),
  },
  {
    name: 'scene: a strip that is broken, seen from below, and a part of the link that could not be read',
    open: (page) => scene(page, '#at=R8&break=strip.3.seized&break=strip.9.seized&view=below'),
  },
  {
    name: 'parts: the reader from the front',
    open: (page) => parts(page, ''),
  },
  {
    name: 'parts: the bed from below, by a link',
    open: async (page) => {
      const figure = await parts(page, '#view=below')
      await expect(page.locator('.parts-views [aria-pressed="true"]')).toHaveText('Below')
      return figure
    },
  },
  {
    name: 'job: no job yet',
    open: async (page) => {
      await openJobs(page)
      return page.locator('.jobs')
    },
  },
  {
    name: 'job: the questions at the example’s intake',
    open: async (page) => {
      await openExample(page)
      return goTo(page, 'Intake')
    },
  },
  {
    name: 'job: the plan of work for the example',
    open: async (page) => {
      await openExample(page)
      const section = await goTo(page, 'Work')
      await section.getByLabel('Clean the strips').check()
      await section.getByLabel('Refit the belt').check()
      await expect(section.locator('.work-steps > li').first()).toBeVisible()
      await kept(page)
      return section
    },
  },
  {
    name: 'measure: a value that cannot be',
    open: async (page) => {
      const item = await presser(page, '-3')
      await expect(item.locator('.measure-trouble')).not.toBeEmpty()
      return item
    },
  },
  {
    name: 'measure: what the values mean',
    open: async (page) => {
      await presser(page, '1.1')
      await expect(page.locator('.measure-verdict')).toContainText('The least left')
      return page.locator('.measure-verdict').locator('xpath=..')
    },
  },
  {
    name: 'share: saving a picture',
    open: async (page) => {
      await page.goto('about:blank')
      await page.goto('./workbench/#pass=3&at=R12&break=strip.3.seized')
      await expect(page.locator('.machine[data-live]')).toBeVisible()
      await page.locator('.save-figure').first().click()
      await expect(page.locator('.save-dialog .save-preview')).toHaveJSProperty('complete', true)
      await expect(page.getByLabel('Description')).not.toBeEmpty()
      return page.locator('.save-dialog')
    },
  },
  {
    name: 'share: the code of a figure for a page of one’s own',
    open: async (page) => {
      await page.goto('about:blank')
      await page.goto('./chapters/the-hold/?step=who-is-pressed#at=R9&break=catch.R12.broken')
      await expect(page.locator('.chapter[data-live]')).toBeVisible()
      const summary = page.locator('.more-controls summary')
      if (await summary.isVisible()) await summary.click()
      await page.getByRole('button', { name: 'Embed …' }).click()
      return page.getByRole('dialog', { name: 'Put it in your page' })
    },
  },
  {
    name: 'share: the slides of a chapter, given up half way',
    open: async (page) => {
      await page.goto('about:blank')
      await page.goto('./chapters/the-cam-gate/')
      await expect(page.locator('.chapter[data-live]')).toBeVisible()
      await page.getByRole('button', { name: 'Save as slides' }).click()
      await page.getByRole('button', { name: 'Cancel' }).click()
      await expect(page.locator('.slides-said')).toHaveText(/^Cancelled/)
      return page.locator('.slides-said').locator('xpath=..')
    },
  },
]

const file = fileURLToPath(new URL('../golden/spoken-pages.txt', import.meta.url))

/** What a browser tells a screen reader of a state; the test’s own address left out. */
const spoken = async (page: Page, { name, open }: Spoken): Promise<string> => {
  const text = await (await open(page)).ariaSnapshot()
  return `# ${name}\n${text.replace(/http:\/\/127\.0\.0\.1:\d+/g, 'https://example.org')}\n`
}

test('what a screen reader is told of twelve states of the machine, jobs, measuring, sharing and parts reads as reviewed', async ({
  page,
}) => {
  const all: string[] = []
  for (const state of states) all.push(await spoken(page, state))
  for (const words of all) expect(words).not.toMatch(/NaN|undefined|null|\[object/)
  const text = all.join('\n')
  // With -u it is written again, to be reviewed.
  if (['all', 'changed'].includes(test.info().config.updateSnapshots)) writeFileSync(file, text)
  expect(text).toBe(readFileSync(file, 'utf8'))
})
