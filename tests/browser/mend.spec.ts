import { faultId } from '@/mechanism/fault.ts'
import { click, expect, open, picture, settled, lastingTest as test } from './page.ts'

test('a part is broken from its own tip, which offers only what that part can have', async ({ page }) => {
  await open(page, 'at=R20')
  await click(page, 'strip.5')
  await page.getByRole('button', { name: 'Break this part' }).click()
  const offered = page.locator('.breaker-list button').filter({ visible: true })
  await expect(offered).toHaveCount(3)
  await offered.filter({ hasText: 'Strip seized' }).click()
  await expect(page.locator('.breaker').getByLabel('Strip', { exact: true })).toHaveValue('5')
  await page.getByRole('button', { name: 'Break it' }).click()
  await expect(page.locator('.chip')).toHaveText(/Strip 5 seized/)
  await expect(picture(page).locator('.strip[data-part="strip.5"]')).toHaveAttribute('data-broken', 'broken')
  await expect(picture(page).locator('.strip-state').nth(4)).toHaveText('seized')
  await expect(page.locator('.notice')).toHaveText('Strip 5 seized.')
})

test('a part that has no fault in the table is not offered for breaking', async ({ page }) => {
  await open(page, 'at=R20')
  await page.locator('.parts').focus()
  for (const key of ['ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'End'])
    await page.keyboard.press(key)
  await expect(page.locator('.tip-name')).toHaveText('The second gate')
  await expect(page.locator('.tip-break')).toBeHidden()
  await page.keyboard.press('Enter')
  await expect(page.locator('.breaker')).toBeHidden()
})

test('one broken part is mended by its own button, and the rest stays broken', async ({ page }) => {
  await open(page, 'at=R60&break=strip.3.seized&break=pin.5.low')
  await expect(page.locator('.chip')).toHaveCount(2)
  await page.getByRole('button', { name: /^Strip 3 seized/ }).click()
  await expect(page.locator('.chip')).toHaveText(/Pin 5 stuck down/)
  await expect(page.locator('.notice')).toHaveText('Mended: Strip 3 seized.')
  expect((await settled(page)).state.faults).toEqual([{ kind: 'pin.low', at: [5], amount: null }])
  await expect(page.locator('.break')).toBeFocused()
})

test('mend all leaves nothing missed and nothing to mend', async ({ page }) => {
  await open(page, 'at=R60&break=strip.3.seized&break=pin.5.low')
  await page.getByRole('button', { name: 'Mend all' }).click()
  await expect(page.locator('.chips')).toHaveText('nothing')
  await expect(page.getByRole('button', { name: 'Mend all' })).toBeHidden()
  await expect(picture(page).locator('.needle[data-mark="missed"]')).toHaveCount(0)
  await expect(page.locator('.happening')).not.toContainText('Missed')
})

test('of two states that one part cannot be in, the one broken last counts', async ({ page }) => {
  await open(page, 'at=R20&break=strip.3.seized')
  await page.locator('.break').click()
  await page.locator('[data-kind="strip.over"]').click()
  await page.locator('.breaker').getByLabel('Strip', { exact: true }).fill('3')
  await page.keyboard.press('Enter')
  await expect(page.locator('.chip')).toHaveText(/Strip 3 stuck shifted/)
})

test('closing the panel gives the keyboard back to where it was', async ({ page }) => {
  await open(page, 'at=R20')
  await page.locator('.break').press('Enter')
  await page.keyboard.press('Escape')
  await expect(page.locator('.breaker')).toBeHidden()
  await expect(page.locator('.break')).toBeFocused()

  await click(page, 'strip.5')
  await page.locator('.tip-break').press('Enter')
  await expect(page.locator('.breaker')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.locator('.parts')).toBeFocused()
})

test('a broken part is mended where it is seen', async ({ page }) => {
  await open(page, 'at=R20&break=strip.3.seized&break=pin.5.low')
  await click(page, 'strip.3')
  await page.getByRole('button', { name: 'Mend it' }).click()
  const { state } = await settled(page)
  expect(state.faults.map(faultId)).toEqual(['pin.5.low'])
  await click(page, 'strip.3')
  await expect(page.getByRole('button', { name: 'Break this part' })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Mend it' })).toBeHidden()
})
