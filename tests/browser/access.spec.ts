import { tabTo } from './hand.ts'
import { drawn, expect, frames, open, settled, test as freshTest, lastingTest as test } from './page.ts'

freshTest(
  'by keyboard alone: break a part, move the carriage, choose a card, turn rows and copy the link',
  async ({ page, context, browserName }) => {
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
  },
)

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
  await frames(page, 24)
  expect(await place()).toBe(at)
})
