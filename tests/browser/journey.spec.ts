import { faultId } from '@/mechanism/fault.ts'
import { momentOf, wrongNeedles } from './model.ts'
import { drawn, expect, type Page, picture, settled, test, watch } from './page.ts'

/** Breaks a part by the panel, with what it proposes changed where named. */
const breakPart = async (page: Page, kind: string, fields: Record<string, string>): Promise<void> => {
  await page.getByRole('button', { name: 'Break a part' }).click()
  await page.locator(`[data-kind="${kind}"]`).click()
  for (const [label, value] of Object.entries(fields))
    await page.locator('.breaker').getByLabel(label, { exact: true }).fill(value)
  await page.getByRole('button', { name: 'Break it' }).click()
}

test('a card is punched, two parts broken, a case made, and a stranger finds the same needles missed', async ({
  page,
  browser,
  baseURL,
}) => {
  test.setTimeout(60_000)
  await page.goto('./workbench/#card=none')
  await expect(page.locator('.workbench[data-live]')).toBeVisible()
  await page.getByRole('button', { name: 'Own card' }).click()
  await page.getByRole('button', { name: 'Begin an empty card' }).click()
  for (const column of [3, 5, 11]) await page.locator(`[aria-label^="Row 1, column ${column},"]`).click()
  await breakPart(page, 'strip.seized', { Strip: '3' })
  await breakPart(page, 'pin.low', { Column: '5' })
  const made = await settled(page)
  expect(made.state.card.kind).toBe('own')
  expect(made.state.faults.map(faultId).sort()).toEqual(['pin.5.low', 'strip.3.seized'])

  await page.locator('.carriage-slider').evaluate((slider) => {
    const input = slider as HTMLInputElement
    input.value = String(Number(input.max) - 2)
    input.dispatchEvent(new Event('input', { bubbles: true }))
  })
  await settled(page)
  await page.getByRole('link', { name: 'Make a case' }).click()
  await page.getByLabel('Title').fill('Looked at in the shop')
  await page.getByLabel('Note').fill('Two things, both to be cleaned.')
  await page.evaluate(() => {
    Object.defineProperty(navigator, 'clipboard', {
      configurable: true,
      value: { writeText: (text: string) => Promise.resolve(void Object.assign(window, { copied: text })) },
    })
  })
  await page.getByRole('button', { name: 'Copy link' }).click()
  const link = await page.waitForFunction(() => Reflect.get(window, 'copied') as string | undefined)
  const address = String(await link.jsonValue())

  const stranger = await browser.newContext({ reducedMotion: 'reduce' })
  const their = await stranger.newPage()
  const wrongs = watch(their, baseURL ?? '')
  await their.goto(address)
  await expect(their.getByRole('heading', { level: 1 })).toHaveText('Looked at in the shop')
  await expect(their.locator('main')).toContainText('Two things, both to be cleaned.')
  await their.getByRole('link', { name: 'See it move' }).click()
  await expect(their.locator('.machine[data-live]')).toBeVisible()
  await drawn(their)
  const moment = momentOf(new URL(their.url()).hash.slice(1))
  expect(moment.state.faults.map(faultId).sort()).toEqual(['pin.5.low', 'strip.3.seized'])
  const missed = wrongNeedles(moment).map(([name]) => name)
  // Columns 3, 11 by the strip, 5 by its pin: three in every twenty-four needles.
  expect(missed).toHaveLength(25)
  await expect(their.locator('.happening')).toContainText('Missed so far: 25 needles')
  await expect(picture(their).locator('.verdict, [data-mark="missed"]').first()).toBeVisible()
  expect(wrongs).toEqual([])
  await stranger.close()
})
