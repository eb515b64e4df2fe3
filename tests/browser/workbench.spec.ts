import { dimensions } from '@/mechanism/dimensions.ts'
import { askedRow, knittedRow } from '@/mechanism/fabric.ts'
import { faultId } from '@/mechanism/fault.ts'
import { withUnit } from '@/words/lists.ts'
import { comparisonWords } from '@/words/machine-comparison.ts'
import { momentOf } from './model.ts'
import {
  drawn,
  edit,
  expect,
  outline,
  type Page,
  picture,
  settled,
  test as freshTest,
  lastingTest as test,
} from './page.ts'

const open = async (page: Page, state = '', beside = ''): Promise<void> => {
  const query = beside === '' ? '' : `?beside=${beside}`
  await page.goto(`./workbench/${query}${state === '' ? '' : `#${state}`}`)
  await expect(page.locator('.workbench[data-live]')).toBeVisible()
  await drawn(page)
}

/** Sets a slider as a hand does, through the values on its way. */
const slide = (page: Page, name: string, ...values: readonly number[]): Promise<void> =>
  page.getByRole('slider', { name }).evaluate((slider, all) => {
    slider.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }))
    for (const value of all) {
      ;(slider as HTMLInputElement).value = String(value)
      slider.dispatchEvent(new Event('input', { bubbles: true }))
    }
  }, values)

const faults = async (page: Page): Promise<string[]> => (await settled(page)).state.faults.map(faultId).sort()

test('a worn machine is not called unbroken', async ({ page }) => {
  await open(page, 'wear=0.8')
  await expect(page.locator('.chips')).toHaveText(/no one part; all of it is worn, 80\s%/)
  await slide(page, 'Wear', 0)
  await expect(page.locator('.chips')).toHaveText('nothing')
})

test('wear, oil, timing and the needles in use are set and go into the address', async ({ page }) => {
  await open(page)
  await slide(page, 'Wear', 0.4, 0.8)
  expect((await settled(page)).state.wear).toBe(0.8)
  await page.getByRole('button', { name: 'Another of this wear' }).click()
  expect((await settled(page)).state.seed).toBe(2)
  await slide(page, 'Timing', 3, 8)
  expect(await faults(page)).toEqual(['belt.timing=8'])
  await slide(page, 'Timing', 0)
  expect(await faults(page)).toEqual([])
  await slide(page, 'Oil', 0.6)
  const slow = await faults(page)
  expect(slow).toHaveLength(8)
  expect(slow[0]).toMatch(/^strip\.1\.slow/)
  await expect(page.locator('.chip')).toHaveCount(1)
  await page.locator('.chip').click()
  expect(await faults(page)).toEqual([])
  await page.getByLabel('First needle in use').fill('l20')
  await page.getByLabel('Last needle in use').fill('r15')
  await page.getByRole('button', { name: 'Use', exact: true }).click()
  const { state } = await settled(page)
  expect(state.bed).toEqual({ first: 80, last: 114 })
})

test('the needle of column 1 is set, goes into the address, and drawing and words go by it when the link is opened', async ({
  page,
}) => {
  await open(page, 'at=R15&break=strip.3.seized')
  await expect(page.locator('.at-needle')).toHaveText('pin 15, at R15')
  await page.getByRole('textbox', { name: 'Column 1' }).fill('l12')
  await page.getByRole('button', { name: 'Set', exact: true }).click()
  await expect(page.locator('.notice')).toContainText('L12, R13 and R37')
  await expect(page.getByRole('textbox', { name: 'Column 1' })).toHaveValue('R13')
  await expect(page.locator('.at-needle')).toHaveText('pin 3, at R15')
  const { state, frame } = await settled(page)
  expect(state.columnOne).toBe(112)
  expect(frame.column).toBe(3)
  expect(new URL(page.url()).hash).toContain('first=R13')
  const link = page.url()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.locator('.at-needle')).toHaveText('pin 15, at R15')
  await page.goto('about:blank')
  await page.goto(link)
  await drawn(page)
  await expect(page.locator('.at-needle')).toHaveText('pin 3, at R15')
  await expect(page.locator('.happening')).toContainText('R15 is missed: strip 3 does not shift')
  await page.getByRole('textbox', { name: 'Column 1' }).fill('7')
  await page.getByRole('button', { name: 'Set', exact: true }).click()
  await expect(page.locator('.notice')).toContainText('“7” is no needle')
  expect((await settled(page)).state.columnOne).toBe(112)
})

for (const [width, height] of [
  [1440, 900],
  [1280, 720],
] as const)
  test(`on a desk the chain is large, with the tools beside it: ${width} by ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await open(page, 'at=R8', 'margins')
    const chain = await picture(page).first().boundingBox()
    const side = await page.locator('.side').boundingBox()
    expect(chain?.width ?? 0).toBeGreaterThan(width / 2)
    expect(side?.x ?? 0).toBeGreaterThanOrEqual((chain?.x ?? 0) + (chain?.width ?? 0))
    const wear = await page.getByRole('slider', { name: 'Wear' }).boundingBox()
    expect(wear?.width ?? 0).toBeGreaterThan(width / 10)
  })

for (const [width, height] of [
  [1440, 900],
  [1280, 720],
] as const)
  test(`a wide page begins with the fabric beside the machine, and only a choice is in the address: ${width} by ${height}`, async ({
    page,
  }) => {
    const beside = (): string | null => new URL(page.url()).searchParams.get('beside')
    const tool = (name: string) => page.getByRole('button', { name, exact: true })
    await page.setViewportSize({ width, height })
    await open(page, 'pass=9&at=R8&break=strip.3.seized')
    await expect(tool('Fabric')).toHaveAttribute('aria-expanded', 'true')
    await expect(page.locator('#tool-fabric svg[data-figure="fabric"]')).toBeInViewport({ ratio: 1 })
    await expect(page.locator('.cloth-words')).toContainText('differ')
    expect(beside()).toBeNull()
    await tool('Margins').click()
    expect(beside()).toBe('margins')
    await tool('Fabric').click()
    expect(beside()).toBe('fabric')
    await tool('Fabric').click()
    expect(beside()).toBeNull()
    await expect(page.locator('#tool-fabric')).toBeHidden()
    await expect(page.locator('.side-hint')).toBeVisible()
  })

test('where the tools are below the machine none is open until one is asked for', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  await open(page, 'pass=9&at=R8')
  await expect(page.locator('.side-hint')).toBeVisible()
  await expect(page.locator('.side [aria-expanded="true"]')).toHaveCount(0)
})

test('the note on dimensions says how far it is from needle to needle on the machine shown', async ({
  page,
}) => {
  const note = page.locator('.beside .pitch')
  await open(page, 'at=R8&own=1_pitch-5')
  await expect(note).toHaveText(withUnit(5, 'mm'))
  await edit(page, 'at=R8')
  await expect(note).toHaveText(withUnit(dimensions.pitch, 'mm'))
})

test('needles that do not exist, or stand the wrong way round, get a sentence and change nothing', async ({
  page,
}) => {
  await open(page)
  await page.getByLabel('First needle in use').fill('X<b>9')
  await page.getByRole('button', { name: 'Use', exact: true }).click()
  await expect(page.locator('.notice')).toContainText('“X<b>9” is no needle')
  await page.getByLabel('First needle in use').fill('R30')
  await page.getByLabel('Last needle in use').fill('R2')
  await page.getByRole('button', { name: 'Use', exact: true }).click()
  await expect(page.locator('.notice')).toContainText('R30 lies to the right of R2')
  expect((await settled(page)).state.bed).toEqual({ first: 0, last: 199 })
})

test('changes are undone and made again, a drag of a slider as one', async ({ page }) => {
  await open(page, 'break=strip.3.seized')
  const undo = page.getByRole('button', { name: 'Undo' })
  const redo = page.getByRole('button', { name: 'Redo' })
  await expect(undo).toBeDisabled()
  await slide(page, 'Wear', 0.1, 0.2, 0.3)
  await page.locator('.chip').click()
  expect(await faults(page)).toEqual([])
  await undo.click()
  expect(await faults(page)).toEqual(['strip.3.seized'])
  expect((await settled(page)).state.wear).toBe(0.3)
  await page.keyboard.press('Control+z')
  expect((await settled(page)).state.wear).toBe(0)
  await expect(undo).toBeDisabled()
  await page.keyboard.press('Control+Shift+z')
  await redo.click()
  expect(await faults(page)).toEqual([])
  await expect(redo).toBeDisabled()
})

test('undoing leaves the carriage where it is', async ({ page }) => {
  await open(page, 'pass=3&at=R10')
  await slide(page, 'Wear', 0.5)
  await page.locator('.row-forward').click()
  await page.keyboard.press('Control+z')
  const { state } = await settled(page)
  expect([state.wear, state.pass]).toEqual([0, 4])
})

test('the fabric beside the machine counts as many wrong stitches as the model', async ({ page }) => {
  const state = 'pass=9&at=R8&break=pin.5.low&break=strip.3.seized'
  await open(page, state)
  const { run } = momentOf(state)
  let wrong = 0
  for (let pass = 2; pass <= 9; pass++) {
    const asked = askedRow(run, pass)
    wrong += knittedRow(run, pass).filter((stitch, index) => stitch !== asked[index]).length
  }
  expect(wrong).toBeGreaterThan(0)
  await expect(page.locator('.cloth-words')).toContainText(`${wrong} stitches differ`)
  await expect(page.locator('.cloth .cloth-wrong')).toHaveAttribute('d', /M/)
  await expect(page.locator('.side .yarn.second[d^="M"]').first()).toBeAttached()
  await page.getByRole('button', { name: 'Mend all' }).click()
  await expect(page.locator('.cloth-words')).toContainText('Every stitch is as the card asks')
})

test('floats over a limit of one’s own are warned about, and lead to their row', async ({ page }) => {
  await open(page, 'pass=9&card=blank', 'fabric')
  await expect(page.locator('.float-count')).toContainText('No float')
  await edit(page, 'pass=9')
  await page.getByLabel('Warn of floats over').fill('2')
  await expect(page.locator('.float-count')).toContainText('behind more than 2 stitches')
  const first = page.locator('.float-go').first()
  const row = /Row of pass (\d+)/.exec((await first.textContent()) ?? '')?.[1]
  await first.click()
  expect((await settled(page)).state.pass).toBe(Number(row))
  await page.getByLabel('Warn of floats over').fill('none'.slice(0, 0))
  await expect(page.getByLabel('Warn of floats over')).toHaveAttribute('aria-invalid', 'true')
})

test('any other figure opens beside the machine and follows it', async ({ page }) => {
  await open(page, 'at=R8&break=strip.3.seized', 'figure')
  await page.getByRole('combobox', { name: 'Figure' }).selectOption('timing')
  const svg = page.locator('#tool-figure svg[data-figure="timing"]')
  await expect(svg).toBeVisible()
  const before = await svg.evaluate(outline)
  await edit(page, 'at=R40&break=strip.3.seized')
  expect(await svg.evaluate(outline)).not.toBe(before)
})

test('the sound machine is beside the broken one on the same carriage, and both are in the first screen', async ({
  page,
}) => {
  const state = 'pass=9&at=R8&break=strip.3.seized'
  await open(page, state)
  await page.getByRole('button', { name: 'Compare' }).click()
  const below = page.locator('.other svg')
  await expect(below.locator('.carriage').first()).toBeVisible()
  const place = async (svg: ReturnType<Page['locator']>): Promise<number> =>
    ((await svg.locator('.carriage').first().boundingBox())?.x ?? NaN) - ((await svg.boundingBox())?.x ?? NaN)
  expect(Math.abs((await place(below)) - (await place(picture(page).first())))).toBeLessThan(1)
  for (const machine of [below, picture(page).first(), page.locator('.play')])
    await expect(machine).toBeInViewport({ ratio: 1 })
  await expect(page.locator('.compare-title').first()).toContainText('Strip 3 seized')
  await expect(page.locator('.compare-title').last()).toContainText('sound')
  const wrong = momentOf(state).frame.pass.departures.length
  await expect(page.locator('.compare-words')).toContainText(`differ on ${wrong} needles`)
})

test('a state that is kept is beside another, also after a reload, and they change places', async ({
  page,
}) => {
  await open(page, 'pass=9&at=R8&break=strip.3.seized', 'compare')
  await page.getByRole('button', { name: 'Keep this state' }).click()
  await page.locator('.chip').click()
  await expect(page.locator('.compare-title').last()).toContainText('Strip 3 seized')
  await expect(page.locator('.compare-title').first()).toContainText('sound')
  await settled(page)
  await page.reload()
  await expect(page.locator('.workbench[data-live]')).toBeVisible()
  await page.getByLabel(/the state kept/).check()
  await expect(page.locator('.compare-title').last()).toContainText('Strip 3 seized')
  await page.getByRole('button', { name: 'Change places' }).click()
  expect(await faults(page)).toEqual(['strip.3.seized'])
  await expect(page.locator('.compare-title').last()).toContainText('sound')
})

test('a state that is kept runs at its own speed, whatever the speed beside it', async ({ page }) => {
  const [fast, slow] = [
    'pass=9&at=R8&speed=900&break=strip.3.slow',
    'pass=9&at=R8&speed=100&break=strip.3.slow',
  ]
  await open(page, fast, 'compare')
  await page.getByRole('button', { name: 'Keep this state' }).click()
  await edit(page, slow)
  const differ = comparisonWords(momentOf(slow).frame.pass, momentOf(fast).frame.pass)
  expect(differ).toContain('differ')
  await expect(page.locator('.compare-words')).toHaveText(differ)
  await expect(page.locator('.compare-title').first()).toContainText(withUnit(100, 'mm/s'))
  await expect(page.locator('.compare-title').last()).toContainText(withUnit(900, 'mm/s'))
})

test('the chance of selection is computed and tried, and the two agree', async ({ page }) => {
  await open(page, 'wear=0.8', 'margins')
  await expect(page.locator('.chance-words')).toContainText('agree')
  await expect(page.locator('.chance-exact')).toContainText('%')
  await expect(page.locator('.chance-tried')).toContainText('on 400 machines')
  await edit(page, 'wear=0.8&break=strip.3.seized')
  await expect(page.locator('.chance-exact')).toContainText('no such formula')
  await expect(page.locator('.chance-tried')).toContainText('on 400 machines')
})

test('the keys are listed in a panel that Escape closes', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Keys' }).press('Enter')
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeHidden()
  await expect(page.getByRole('button', { name: 'Keys' })).toBeFocused()
})

test.describe('on a phone', () => {
  test.use({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true })

  freshTest(
    'every control is at least 44 pixels high, and nothing is wider than the page',
    async ({ page }) => {
      await open(page, 'pass=9&break=strip.3.seized')
      for (const tool of ['Fabric', 'Figures', 'Compare', 'Margins']) {
        await page.getByRole('button', { name: tool }).tap()
        await drawn(page)
        const small = await page
          .locator('.workbench :is(button, select, input:not([type="radio"]), a)')
          .evaluateAll((all) =>
            all
              .filter((one) => one.checkVisibility() && one.closest('.card-editor') === null)
              .filter((one) => one.getBoundingClientRect().height < 43.5)
              .map((one) => one.outerHTML.slice(0, 80)),
          )
        expect(small).toEqual([])
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360)
      }
    },
  )
})
