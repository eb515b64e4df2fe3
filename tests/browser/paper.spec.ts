import { answerOf } from '@/features/paper/worksheet-view.ts'
import { worksheet } from '@/lesson/worksheet.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { needleIndex } from '@/mechanism/bed.ts'
import { axeFindsLight } from './axe.ts'
import { pageOf as pageOfSite } from './built.ts'
import { expect, type Page, test as freshTest, lastingTest as test } from './page.ts'
import { type Format, formats, type Printed, printOn } from './printed.ts'

const library = cardLibrary(cardsFolder)

const open = async (page: Page, part: string): Promise<void> => {
  await page.goto(`paper/${part}`)
  await expect(page.locator('h1')).toHaveCount(1)
}

/** What a page holds beside its foot. */
const body = ({ words }: Printed): string =>
  words.replace(/Every Eighth Needle(: [a-z ]+)? ?\d+ of \d+/, '').trim()

/** The page on which words stand, from 1; 0 where none has them. */
const pageOf = (pages: readonly Printed[], words: string): number =>
  pages.findIndex((one) => one.words.includes(words)) + 1

/** Long enough for all handouts on a busy machine, in ms. */
const timeout = 60_000

/** Waits until the page says that all it prints is here. */
const whole = (page: Page): Promise<void> =>
  expect(page.locator('.paper-said')).toHaveText(/^Ready to print: all \d+ pictures are here\.$/, { timeout })

const missing = 'Some handouts or pictures are missing'

/** Prints on both papers and looks for empty pages. */
const printBoth = async (
  page: Page,
  look: (pages: readonly Printed[], format: Format) => void | Promise<void>,
): Promise<void> => {
  for (const format of formats) {
    const pages = await printOn(page, format)
    for (const [n, one] of pages.entries()) expect(body(one), `${format}, page ${n + 1}`).not.toBe('')
    await look(pages, format)
  }
}

test('the fault chart is one sheet, from the title to its last row and its cautions', async ({ page }) => {
  await open(page, 'fault-chart/')
  await printBoth(page, (pages) => {
    expect(pages).toHaveLength(1)
    for (const words of [
      'Which needles are wrong?',
      'Rows repeated, missing or mirrored',
      'pawls step two rows',
    ])
      expect(pageOf(pages, words), words).toBe(1)
    expect(pages[0]?.words).toContain('manual comes first.')
  })
})

test('needles by column and by strip are written again for another needle of column 1, which the address keeps', async ({
  page,
}) => {
  await open(page, 'needle-table/#first=L12')
  const firstRow = page.locator('.needle-table tbody tr').first()
  await expect(page.locator('.sheet-first')).toHaveText('L12')
  await expect(firstRow).toContainText('R13 R37 R61 R85')
  await page.getByLabel('Column 1 is at needle').fill('r5')
  await page.getByLabel('Column 1 is at needle').press('Enter')
  await expect(firstRow).toContainText('R5 R29 R53 R77')
  expect(new URL(page.url()).hash).toBe('#first=R5')
  await expect(page.getByRole('link', { name: 'On the workbench' })).toHaveAttribute(
    'href',
    /workbench\/#first=R5$/,
  )
  await page.getByLabel('Column 1 is at needle').fill('Q')
  await page.getByLabel('Column 1 is at needle').press('Enter')
  await expect(page.locator('.first-needle [role="status"]')).toContainText('“Q” is no needle')
  await expect(page.locator('.sheet-first')).toHaveText('R5')
  await open(page, 'catch-sheet/#first=R2')
  await expect(page.locator('.catch-sheet tbody tr').first().locator('td').first()).toContainText('L95')
})

test('the test card is drawn at true size, with its ruler, and says how to use it', async ({ page }) => {
  await open(page, 'test-card/')
  await printBoth(page, async (pages, format) => {
    expect(pages).toHaveLength(2)
    const [card, usage] = pages
    const paths = (await card?.paths()) ?? []
    const ruler = paths.filter(({ width, height }) => Math.abs(width - 100) < 0.5 && height < 0.5)
    expect(ruler.length, format).toBeGreaterThan(0)
    const holes = paths.filter(
      ({ width, height }) => Math.abs(width - 3.5) < 0.05 && Math.abs(height - 3.5) < 0.05,
    )
    expect(holes.length).toBeGreaterThan(100)
    expect(card?.words).toContain('39 1 again 2 again')
    expect(card?.words).toContain('print it at its true size.')
    expect(usage?.words).toContain('13 No card, to the right')
  })
})

test('the check list keeps its last stage and its notes together', async ({ page }) => {
  await open(page, 'check-list/')
  await printBoth(page, (pages) => {
    expect(pages).toHaveLength(3)
    expect(pageOf(pages, '10. Prove it, and close')).toBe(3)
    expect(pageOf(pages, 'Notes, parts fitted')).toBe(3)
  })
})

test('a worksheet follows its name in the address, and its answers stand on a page of their own', async ({
  page,
}) => {
  await open(page, 'worksheets/?seed=Tuesday')
  const field = page.getByLabel('Which worksheet')
  await expect(field).toHaveValue('tuesday')
  const tasks = worksheet('tuesday', library)
  await expect(page.locator('.task .prompt')).toHaveText(tasks.map(({ question }) => question.prompt))
  await expect(page.locator('.answer strong')).toHaveText(
    tasks.map(({ question }) => answerOf(question).answer),
  )
  await printBoth(page, (pages) => {
    expect(pageOf(pages, 'Answers to worksheet tuesday')).toBe(4)
    const [last] = tasks.slice(-1)
    expect(pages[2]?.words.replaceAll(' ', '')).toContain(last?.question.prompt.replaceAll(' ', ''))
    for (const one of pages.slice(0, 3)) expect(one.words).not.toContain('Answers to')
  })
  await page.getByRole('button', { name: 'Next one' }).click()
  await expect(page).toHaveURL(/\?seed=tuesday\+2$/)
  await expect(page.getByRole('heading', { name: 'Answers to worksheet tuesday 2' })).toBeVisible()
  await field.fill('x'.repeat(41))
  await page.keyboard.press('Enter')
  await expect(page.locator('.worksheet-said')).toHaveText(
    'A worksheet’s name may have 40 characters, and this one has 41. Worksheet tuesday 2 is here.',
  )
  await page.goBack()
  await expect(field).toHaveValue('tuesday')
})

test('a worksheet is made for the bed whose column 1 the reader names', async ({ page }) => {
  await open(page, 'worksheets/?seed=tuesday#first=R5')
  const prompts = (columnOne: string): string[] =>
    worksheet('tuesday', library, { columnOne: needleIndex(columnOne)! }).map(
      ({ question }) => question.prompt,
    )
  expect(prompts('R5')).not.toEqual(prompts('R1'))
  await expect(page.locator('.task .prompt')).toHaveText(prompts('R5'))
  await expect(page.locator('.answer-show').first()).toHaveAttribute('href', /first=R5/)
  await expect(page.locator('.sheet-lead .sheet-first').first()).toHaveText('R5')
  await page.getByRole('button', { name: 'Next one' }).click()
  expect(new URL(page.url()).hash).toBe('#first=R5')
  await page.goBack()
  const field = page.getByLabel('Column 1 is at needle')
  await field.fill('L12')
  await field.press('Enter')
  await expect(page.locator('.task .prompt')).toHaveText(prompts('L12'))
  expect(new URL(page.url()).hash).toBe('#first=R13')
  await page.reload()
  await expect(page.locator('.task .prompt')).toHaveText(prompts('R13'))
})

freshTest('the class pack holds every part in its order, each from a new page', async ({ page }) => {
  test.slow()
  await open(page, 'pack/?seed=7')
  await expect(page.getByRole('heading', { name: 'Answers to worksheet 7' })).toBeAttached()
  await whole(page)
  const pictures = await page
    .locator('.sheet img')
    .evaluateAll((images) => images.map((image) => image.getAttribute('alt') ?? ''))
  expect(pictures).toHaveLength(89)
  await printBoth(page, async (pages, format) => {
    if (format === 'A4') {
      const drawn = (await Promise.all(pages.map((one) => one.drawn()))).flat()
      expect(drawn.filter((words) => pictures.includes(words))).toEqual(pictures)
    }
    expect(pageOf(pages, missing)).toBe(0)
    expect(pageOf(pages, 'Class pack')).toBe(1)
    expect(pageOf(pages, 'Which needles are wrong?')).toBe(2)
    expect(pageOf(pages, 'The first four take two minutes')).toBe(3)
    expect(pageOf(pages, 'Needles left of the middle')).toBe(5)
    expect(pageOf(pages, 'Every eighth stays down: tick its box.')).toBe(6)
    expect(pageOf(pages, '39 1 again 2 again')).toBe(7)
    expect(pageOf(pages, 'Machine and number')).toBe(9)
    expect(pageOf(pages, 'Work these out by hand.')).toBe(19)
    expect(pageOf(pages, 'Answers to worksheet 7')).toBe(22)
    const chapters = Array.from({ length: 10 }, (_, n) => pageOf(pages, `Chapter ${n + 1} of 10`))
    expect(pageOf(pages, 'with the plug out. Write what you measure')).toBe(17)
    expect(chapters[0]).toBeGreaterThan(22)
    expect(chapters).toEqual([...chapters].sort((one, other) => one - other))
    expect(new Set(chapters).size).toBe(10)
    expect(pages.at(-1)?.words).toMatch(new RegExp(`${pages.length} of ${pages.length}`))
    for (const words of ['What happens', 'on a page of its own'])
      expect(
        pages.some((one) => one.words.includes(words)),
        words,
      ).toBe(false)
    expect(pageOf(pages, 'Before you call the customer')).toBeGreaterThan(20)
  })
})

/** Holds a part of a page to the rules for those who can't see it, and the page to a phone's width. */
const expectSound = async (page: Page, within: string): Promise<void> => {
  expect(await axeFindsLight(page, [], [within])).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0)
}

freshTest(
  'handouts print once their pictures are there, with their answers where that is asked for',
  async ({ page }) => {
    await page.addInitScript(() => {
      window.print = () => {
        document.body.dataset.printed = String([...document.images].every(({ complete }) => complete))
      }
    })
    await page.setViewportSize({ width: 360, height: 740 })
    await open(page, 'handouts/')
    await page.getByLabel('Print with the answers').check()
    await page.getByRole('button', { name: 'Print', exact: true }).click()
    await expect(page.locator('body')).toHaveAttribute('data-printed', 'true')
    await whole(page)
    const answers = page.locator('[data-sheet="handout"] details')
    expect(await answers.count()).toBeGreaterThan(50)
    await expect(page.locator('[data-sheet="handout"] details:not([open])')).toHaveCount(0)
    await page.getByLabel('Print with the answers').uncheck()
    await expect(page.locator('[data-sheet="handout"] details[open]')).toHaveCount(0)
    // All handouts at once would take the checker too long: this one has every kind of thing in it.
    await expectSound(page, '#handout-10-on-the-bench')
  },
)

freshTest('a handout alone is on its own page, and prints on both papers', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 })
  await open(page, 'handouts/on-the-bench/')
  await expectSound(page, 'main')
  await printBoth(page, (pages) => {
    expect(pageOf(pages, 'Chapter 10 of 10')).toBe(1)
    expect(pageOf(pages, 'Handout:')).toBe(0)
  })
  await page.getByRole('link', { name: 'all handouts in one run' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Chapter handouts')
})

freshTest(
  'what can’t be had is said on the page and at the top of the print, and Print tries it again',
  async ({ page }) => {
    await page.addInitScript(() => {
      window.print = () => (document.body.dataset.printed = '')
    })
    const pictures = pageOfSite('paper/handouts/on-the-bench/index.html').querySelectorAll('.sheet img')
    const picture = [...pictures].at(-1)?.getAttribute('src') ?? 'a handout without pictures'
    const missed = ['**/handouts/the-hold/', `**${picture}`]
    // As a guest network answers that wants a name first.
    for (const address of missed)
      await page.route(address, (route) =>
        route.fulfill({ contentType: 'text/html', body: '<p>Sign in first.</p>' }),
      )
    await open(page, 'handouts/')
    const said = page.locator('.paper-said')
    await expect(said).toHaveText('1 handout and 1 picture could not be fetched. Print tries again.', {
      timeout,
    })
    const sheet = page.locator('#handout-06-the-hold')
    await expect(sheet.getByRole('link', { name: 'on a page of its own' })).toBeVisible()
    const [first] = await printOn(page, 'A4', '1')
    expect(first?.words).toMatch(new RegExp(`${missing}.*Chapter 1 of 10`))
    for (const address of missed) await page.unroute(address)
    await page.getByRole('button', { name: 'Print', exact: true }).click()
    await expect(page.locator('body')).toHaveAttribute('data-printed', '', { timeout })
    await whole(page)
    await expect(sheet.locator('.handout-step').first()).toBeAttached()
    const [again] = await printOn(page, 'A4', '1')
    expect(again?.words).toContain('Chapter 1 of 10')
    expect(again?.words).not.toContain(missing)
  },
)

for (const part of ['', 'fault-chart/', 'catch-sheet/', 'worksheets/', 'test-card/', 'check-list/'])
  test(`paper/${part} is sound for those who can’t see it, and fits a phone`, async ({ page }) => {
    await page.setViewportSize({ width: 360, height: 740 })
    await open(page, part)
    await expectSound(page, 'main')
  })

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false })

  freshTest('worksheet 1 is there, and nothing to press that would do nothing', async ({ page }) => {
    await open(page, 'worksheets/')
    await expect(page.getByRole('heading', { name: 'Answers to worksheet 1' })).toBeVisible()
    await expect(page.locator('button, input').filter({ visible: true })).toHaveCount(0)
    await expect(page.getByText('Without scripts no other can be made.')).toBeVisible()
  })

  freshTest('each handout can be had on its own page', async ({ page }) => {
    await open(page, 'handouts/')
    await expect(page.locator('#handout-01-the-whole-journey img').first()).toBeVisible()
    await page.locator('#handout-06-the-hold').getByRole('link').click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Handout: Caught, or let go')
    await expect(page.locator('#handout-06-the-hold img').first()).toBeVisible()
  })
})
