import AxeBuilder from '@axe-core/playwright'
import { click, drawn, expect, open, settled, test, type Page } from './page.ts'

const shows: Record<string, (page: Page) => Promise<void>> = {
  'as it is': () => Promise.resolve(),
  'with a tip pinned': (page) => click(page, 'strip.5'),
  'with the panel open': async (page) => {
    await page.keyboard.press('Escape')
    await page.locator('.break').click()
  },
  'with a fault’s form refusing a number': async (page) => {
    await page.locator('[data-kind="strip.slow"]').click()
    await page.locator('.breaker').getByLabel('Strip', { exact: true }).fill('9')
    await page.keyboard.press('Enter')
  },
  'with the cards open': async (page) => {
    await page.getByRole('button', { name: 'Close', exact: true }).click()
    await page.locator('button[aria-labelledby="card-label card-name"]').click()
  },
}

for (const colorScheme of ['light', 'dark'] as const)
  test(`axe finds nothing, in the ${colorScheme} scheme`, async ({ page }) => {
    await page.emulateMedia({ colorScheme })
    await open(page, 'at=R20&break=strip.3.seized&break=pin.3.low&note=Look+here&colour=red')
    for (const [name, show] of Object.entries(shows))
      await test.step(name, async () => {
        await show(page)
        const axe = new AxeBuilder({ page })
        // The drawing stays as it is, and takes axe long.
        if (name !== 'as it is') axe.exclude('.drawing svg')
        const { violations } = await axe.analyze()
        expect(violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => target)])).toEqual([])
      })
  })

/** Tabs on until an element of this selector has the keyboard. */
const tabTo = async (page: Page, selector: string): Promise<void> => {
  for (let n = 0; n < 80; n++) {
    await page.keyboard.press('Tab')
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return
  }
  throw new Error(`Tab never comes to ${selector}`)
}

test('by keyboard alone: break a part, move the carriage, choose a card, turn rows and copy the link', async ({
  page,
  context,
  browserName,
}) => {
  if (browserName === 'chromium') await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await open(page, 'at=R20')
  const type = async (...keys: readonly string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key)
  }
  await tabTo(page, '.row-forward')
  await type('Enter')
  await tabTo(page, '[aria-labelledby="card-label card-name"]')
  await type('Enter', 'Tab', 'Tab', 'ArrowDown', 'Escape')
  await tabTo(page, '.break')
  await type('Enter')
  await page.keyboard.type('every 24th never')
  await tabTo(page, '[data-kind="pin.low"]')
  await type('Enter', 'ControlOrMeta+a')
  await page.keyboard.type('7')
  await type('Enter')
  await expect(page.locator('.chip')).toHaveText(/Pin 7 stuck down/)
  await expect(page.locator('.break')).toBeFocused()
  await tabTo(page, '.carriage-slider')
  await type('PageDown', 'PageDown', 'ArrowLeft')
  await tabTo(page, '.copy')
  await type('Enter')
  await expect(page.locator('.notice')).toContainText('link')
  const { state } = await settled(page)
  expect(state).toMatchObject({ pass: 2, at: 211 - 16.25 })
  expect(state.card).not.toEqual({ kind: 'site', id: 'harbour-star' })
  expect(state.faults).toEqual([{ kind: 'pin.low', at: [7], amount: null }])
  await tabTo(page, '.mend')
  await type('Enter')
  await expect(page.locator('.chips')).toHaveText('nothing')
})

test('a part of the drawing answers the open form by keyboard too', async ({ page }) => {
  await open(page, 'at=R20')
  await page.locator('.break').press('Enter')
  await page.locator('[data-kind="pin.high"]').press('Enter')
  await page.locator('.parts').focus()
  for (const key of ['ArrowDown', 'ArrowDown', 'Home', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Enter'])
    await page.keyboard.press(key)
  await expect(page.locator('.breaker').getByLabel('Column', { exact: true })).toHaveValue('4')
})

test('whatever has the keyboard shows it', async ({ page }) => {
  await open(page, 'at=R20&break=strip.3.seized')
  const seen: string[] = []
  for (let n = 0; n < 30; n++) {
    await page.keyboard.press('Tab')
    const focus = await page.evaluate(() => {
      const active = document.activeElement
      if (!active || active === document.body) return null
      const { outlineStyle, outlineWidth } = getComputedStyle(active)
      return {
        name: active.className || active.nodeName,
        line: outlineStyle === 'none' ? 0 : parseFloat(outlineWidth),
      }
    })
    if (!focus) break
    seen.push(focus.name)
    expect(focus.line, focus.name).toBeGreaterThanOrEqual(2)
  }
  expect(seen.join(' ')).toMatch(
    /row-forward.*speed.*slowness.*chip.*break.*mend.*copy.*parts.*play.*carriage-slider/,
  )
})

test('reduced motion moves nothing by itself: the window and the card are at once where they belong', async ({
  page,
}) => {
  await open(page, 'at=R20')
  await page.locator('.row-forward').click()
  const place = (): Promise<string | null> =>
    page.locator('.drawing svg .map-window').first().getAttribute('x')
  await drawn(page)
  const at = await place()
  await page.waitForTimeout(400)
  expect(await place()).toBe(at)
})
