import { axeFinds } from './axe.ts'
import { drawn, expect, type Page, lastingTest as test } from './page.ts'

/** What is done on the way from one state to the next, and what the state is called. */
type Stop = readonly [name: string, act?: (page: Page) => Promise<unknown>]

const press =
  (name: string) =>
  (page: Page): Promise<void> =>
    page.getByRole('button', { name, exact: true }).filter({ visible: true }).first().click()

const keys =
  (...names: readonly string[]) =>
  async (page: Page): Promise<void> => {
    for (const name of names) await page.keyboard.press(name)
  }

const openAll = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true
  })

/** Answers the question that is asked with whatever is there, or with its first choice. */
const answer = async (page: Page): Promise<void> => {
  const form = page.locator('.quiz-live form.question').first()
  const choice = form.locator('input[type="radio"], [data-needle]').first()
  if (await choice.count()) await choice.click()
  await form.getByRole('button', { name: 'Check', exact: true }).click()
  await expect(form.locator('.verdict-words')).not.toBeEmpty()
}

const toQuiz = async (page: Page): Promise<void> => {
  await page.locator('#questions').scrollIntoViewIfNeeded()
  await expect(page.locator('#questions[data-live]')).toBeVisible()
}

/** Walks of states, each on one load of a page. */
const walks: Readonly<Record<string, readonly Stop[]>> = {
  './#at=R20&break=strip.3.seized&break=pin.3.low&note=Look+here&colour=red': [
    ['a link with a note and a part that can’t be read'],
    ['a part’s tip', (page) => page.locator('.parts').press('ArrowDown')],
    ['the panel', (page) => page.locator('.break').click()],
    ['a fault’s form', (page) => page.locator('[data-kind="strip.slow"]').click()],
    [
      'a number refused',
      async (page) => {
        await page.locator('.breaker').getByLabel('Strip', { exact: true }).fill('9')
        await page.keyboard.press('Enter')
      },
    ],
    [
      'the cards',
      async (page) => {
        await page.locator('.breaker-close').click()
        await page.locator('button[aria-labelledby="card-label card-name"]').click()
      },
    ],
  ],
  './job/': [
    ['no job yet, and her own experience', openAll],
    ['what its owner says', press('Look at an example')],
    ['whether to remove it', press('Remove this job')],
  ],
  './measure/': [
    ['nothing measured, and all that folds', openAll],
    [
      'a value that can’t be',
      async (page) => {
        await page.locator('.measure-item[data-name="presserLeft"] input').first().fill('-1')
        await page.keyboard.press('Tab')
      },
    ],
    [
      'values judged',
      async (page) => {
        await page.locator('.measure-item[data-name="presserLeft"] input').first().fill('1.1')
        await page.keyboard.press('Tab')
        await expect(page.locator('.measure-settings li').first()).toBeVisible()
      },
    ],
  ],
  './parts/': [
    ['the reader, and all that is told', openAll],
    ['turned', (page) => page.locator('.parts-turn [data-turn="right"]').click()],
    ['taken apart', (page) => page.locator('.parts-views [data-view="apart"]').click()],
  ],
  './embed/scene/?subject=needle.R900#at=R12&break=catch.R11.broken&note=Look+here&view=30.20.100': [
    ['turned, with a note and what can’t be read'],
    ['a needle on', (page) => page.getByRole('slider', { name: 'Carriage' }).press('PageUp')],
  ],
  './chapters/the-cam-gate/': [
    [
      'slides given up',
      async (page) => {
        await press('Save as slides')(page)
        await press('Cancel')(page)
        await expect(page.locator('.slides-said')).toHaveText(/^Cancelled/)
      },
    ],
  ],
  './chapters/the-hold/': [
    ['a term', (page) => page.locator('button.term').first().click()],
    [
      'a prediction answered',
      async (page) => {
        await page.keyboard.press('Escape')
        await page.locator('.predict').first().getByRole('radio').first().check()
      },
    ],
    ['the question', toQuiz],
    ['the question answered', answer],
    ['the next', press('Next question')],
    ['and that answered', answer],
    [
      'the question before progress is cleared',
      async (page) => {
        await page.goto('./chapters/')
        await press('Clear')(page)
      },
    ],
  ],
  './workbench/?beside=fabric#wear=0.4&pass=9&at=R8&break=strip.3.seized': [
    ['the fabric'],
    ['the other figures', press('Figures')],
    ['two machines', press('Compare')],
    ['the margins', press('Margins')],
    ['a card of one’s own', press('Own card')],
    ['text for a card', press('Paste text')],
    ['text that can’t be read', (page) => page.locator('.own-paste textarea').fill('ooo\nabc')],
    [
      'the sheet to punch',
      async (page) => {
        await press('Close')(page)
        await page.locator('.own-sheet-open').click()
        await expect(page.locator('.own-page')).toHaveAttribute('src', /./)
      },
    ],
    [
      'the keys',
      async (page) => {
        await press('Close')(page)
        await page.locator('.bench-buttons .keys').click()
      },
    ],
    [
      'the code for another page',
      async (page) => {
        await page.keyboard.press('Escape')
        await page.locator('.embed-figure').first().click()
        await expect(page.locator('.embed-dialog')).toBeVisible()
      },
    ],
    [
      'saving a picture',
      async (page) => {
        await page.keyboard.press('Escape')
        await page.locator('.save-figure').first().click()
        await expect(page.locator('.save-dialog .save-preview')).toHaveJSProperty('complete', true)
      },
    ],
    ['saving a film', (page) => page.locator('.save-dialog').getByText('Film', { exact: true }).click()],
  ],
  './find/#pass=1.right.500.wR3-R19x8_R40.uL1.nR98-R100&check=retainer&found=strip.3.seized&colour=red': [
    ['a finding, and a link’s part that can’t be read', openAll],
    ['the cards', (page) => page.locator('[aria-labelledby="find-card find-card-name"]').click()],
  ],
  './find/#pass=1.right.500.wR3-R99x8_R40': [
    ['two faults that explain it together', openAll],
    [
      'needles that can’t be read',
      async (page) => {
        await page.locator('.typed input').fill('R300 x')
        await page.keyboard.press('Enter')
      },
    ],
    [
      'practice answered',
      async (page) => {
        await press('Practise')(page)
        await press('Say so')(page)
      },
    ],
  ],
  './case/?make#title=Your+machine&break=strip.3.seized&note=Hello&colour=red': [
    ['a case being made, from a link that was cut'],
    ['a text that is too long', (page) => page.getByLabel('Title').fill('long '.repeat(60))],
  ],
  './search/?q=sweep': [['results'], ['none', (page) => page.getByRole('searchbox').fill('qqqqqq')]],
  './teach/': [['all that folds', openAll]],
  './class/the-hold/?step=who-is-pressed': [
    ['a prediction', keys('PageDown')],
    ['its answer', keys('r')],
    ['the machine', keys('m')],
    ['the keys', keys('m', 'k')],
    ['the code', keys('k', 'q')],
    ['the pointer', keys('q', 'p')],
    ['blank', keys('b')],
  ],
  './class/the-hold/?quiz=1.1': [['a question'], ['its answer', keys('r')]],
  './class/the-hold/speaker/': [
    ['the controls', openAll],
    ['blank', keys('b')],
  ],
}

for (const [address, stops] of Object.entries(walks))
  test(`axe finds nothing on the way through ${address.replace(/[?#].*/, '')}, light or dark: ${stops.map(([name]) => name).join(', ')}`, async ({
    page,
  }) => {
    await page.goto(address)
    const live = page.locator(':is(.machine, .find, .case, .embed)[data-live]').first()
    if (/#|class|chapters/.test(address)) await expect(live).toBeVisible()
    for (const [n, [name, act]] of stops.entries()) {
      await act?.(page)
      await drawn(page)
      // Drawings and grids stay as they are, and take axe long.
      const without = n === 0 ? [] : ['.drawing svg', '.side-picture', '.place', '.bed-grid', '.own-grid']
      expect(await axeFinds(page, without), name).toEqual([])
    }
  })
