import { fabricSentence, mendedSentence, trailSentence } from '@/words/figures/mend.ts'
import { layouts, shownRows } from '@/drawings/mend/layout.ts'
import { mendedAfter } from '@/mechanism/mended.ts'
import { momentOf } from './model.ts'
import { expect, open, settled, test, type Locator, type Page } from './page.ts'
import { expectNoTrap, tabTo } from './hand.ts'

const broken = momentOf('break=strip.3.seized').run
const mended = mendedAfter(broken, momentOf('').run, 32)
const subject = layouts.wide.subject

const fabric = (page: Page): Locator => page.locator('.home-drawing svg').filter({ visible: true })

/** The lower edge of an element, in pixels of the screen. */
const bottom = async (element: Locator): Promise<number> => {
  const box = await element.boundingBox()
  return (box?.y ?? Infinity) + (box?.height ?? 0)
}

for (const [width, height] of [
  [360, 740],
  [390, 844],
  [1024, 768],
  [1280, 720],
] as const)
  test(`the first screen says it all, ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await page.goto('./')
    const [title, lead] = [page.locator('h1'), page.locator('.home-lead')]
    await expect(title).toContainText('knitting machine')
    await expect(lead).toHaveText(trailSentence(broken, subject))
    await expect(lead).toContainText('pattern')
    await expect(lead).toContainText(/needle R11 was missed/)
    for (const shown of [title, lead, page.getByRole('button', { name: 'Mend it' })])
      expect(await bottom(shown)).toBeLessThanOrEqual(height)
    // From the strip down to some of the fabric with the line in it.
    await expect(fabric(page).locator('.strip[data-broken="broken"]')).toBeInViewport()
    await expect(fabric(page).locator('.wrong-edge')).toBeInViewport({ ratio: 0.4 })
    const ways = page.locator('.top').locator('a, button').filter({ visible: true })
    const middles = await ways.evaluateAll((all) =>
      all.map((one) => {
        const { top, height: high } = one.getBoundingClientRect()
        return Math.round((top + high / 2) / 6)
      }),
    )
    expect(new Set(middles).size).toBe(1)
  })

test('one press mends it, and the next rows come whole', async ({ page }) => {
  await page.goto('./')
  const [press, said] = [page.locator('.home-mend'), page.locator('.home-said')]
  await expect(said).toHaveText(fabricSentence(broken, 31, shownRows))
  const wrong = (): Promise<number> =>
    fabric(page)
      .locator('.wrong')
      .first()
      .evaluate((path) => (path.getAttribute('d') ?? '').split('M').length)
  const before = await wrong()
  await press.click()
  await expect(press).toHaveText('Break it again')
  await expect(said).toHaveText(fabricSentence(mended, 44, shownRows))
  await expect(fabric(page).locator('[data-broken="broken"]')).toHaveCount(0)
  await expect(fabric(page).locator('.needle-name[data-mark="missed"]')).toHaveCount(0)
  expect(await wrong()).toBeLessThan(before / 1.5)
  await press.click()
  await expect(press).toHaveText('Mend it')
  await expect(said).toHaveText(fabricSentence(broken, 32, shownRows))
  expect(await wrong()).toBeGreaterThanOrEqual(before)
})

test.describe('in motion', () => {
  test.use({ motion: 'no-preference' })

  test('rows come one by one, and a press in between ends it at once', async ({ page }) => {
    await page.goto('./')
    const rows = fabric(page).locator('.going-down')
    const lowered = (transform: string | null): number =>
      Number(/translate\(0 ([\d.]+)/.exec(transform ?? '')?.[1])
    const row = async (): Promise<number> => lowered(await rows.getAttribute('transform'))
    const built = await (await page.request.get('./')).text()
    const first = lowered(/<g transform="translate[^>]*going-down/.exec(built)?.[0] ?? null)
    // The broken machine knits a row by itself, and then waits.
    await expect.poll(row).toBeCloseTo(first + layouts.wide.rowHeight, 0)
    const press = page.locator('.home-mend')
    await press.click()
    await expect(page.locator('.home-said')).toHaveText(mendedSentence(mended, subject))
    await expect.poll(row).toBeCloseTo(first + 2 * layouts.wide.rowHeight, 0)
    await press.click()
    await expect(page.locator('.home-said')).toHaveText(fabricSentence(broken, 32, shownRows))
    const after = await row()
    await page.waitForTimeout(400)
    expect(await row()).toBe(after)
  })
})

test('ways lead on, by keyboard too', async ({ page }) => {
  await page.goto('./')
  await expect(page.locator('.home[data-live]')).toBeVisible()
  await tabTo(page, '.home-mend')
  await page.keyboard.press('Enter')
  await expect(page.locator('.home-mend')).toHaveText('Break it again')
  const ways = page.locator('.home-ways a')
  expect(await ways.evaluateAll((all) => all.map((way) => way.getAttribute('href')))).toEqual([
    expect.stringContaining('/chapters/the-whole-journey/'),
    expect.stringContaining('/find/'),
    expect.stringContaining('/job/'),
    expect.stringContaining('/parts/'),
  ])
  await tabTo(page, '.controls-fold summary')
  await page.keyboard.press('Enter')
  await expect(page.locator('.row-forward')).toBeVisible()
  await expectNoTrap(page)
})

test('controls are folded until they are asked for; who was sent a state sees the machine and all of them', async ({
  page,
}) => {
  await open(page)
  await expect(page.locator('.row-forward')).toBeHidden()
  await page.goto('about:blank')
  await open(page, 'pass=3&at=R20&break=strip.5.seized')
  await expect(page.locator('.home-figure')).toBeHidden()
  await expect(page.locator('.machine .picture')).toBeInViewport({ ratio: 0.9 })
  await expect(page.locator('.row-forward')).toBeVisible()
  expect((await settled(page)).state.at).toBe(119)
})

test('on a phone the ways are in a menu that opens over the page', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 })
  await page.goto('./glossary/')
  const way = page.locator('.top').getByRole('link', { name: 'Workbench' })
  await expect(way).toBeHidden()
  await page.getByRole('button', { name: 'Menu' }).press('Enter')
  await expect(way).toBeInViewport()
  await page.keyboard.press('Escape')
  await expect(way).toBeHidden()
  await page.getByRole('button', { name: 'Menu' }).click()
  await way.click()
  await expect(page).toHaveURL(/\/workbench\/$/)
})
