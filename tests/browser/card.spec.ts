import { cardFiles, cardsFolder } from '@/commands/cards.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { momentOf } from './model.ts'
import { expect, open, picture, settled, lastingTest as test, type Page } from './page.ts'

const cardButton = (page: Page) => page.locator('button[aria-labelledby="card-label card-name"]')
const openCards = (page: Page): Promise<void> => cardButton(page).click()
const marks = (page: Page, mark: string) =>
  picture(page).locator(`.needle[data-mark="${mark}"]:not([display="none"])`)

test('the row goes on and back, each from its own side of the bed', async ({ page }) => {
  await open(page, 'pass=2&at=R20')
  await page.getByRole('button', { name: 'One row on' }).click()
  expect((await settled(page)).state).toMatchObject({ pass: 3, at: momentOf('pass=3').state.at })
  await expect(page.locator('.row-readout')).toHaveText('Pass 3, card row 3')
  await page.getByRole('button', { name: 'One row back' }).click()
  await page.getByRole('button', { name: 'One row back' }).click()
  expect((await settled(page)).state).toMatchObject({ pass: 1, at: momentOf('pass=1').state.at })
  await expect(page.getByRole('button', { name: 'One row back' })).toBeDisabled()
  await expect(page.getByRole('button', { name: 'One row on' })).toBeFocused()
})

test('the choice holds every card of the site and no card, the present one marked', async ({ page }) => {
  await open(page, 'at=R20')
  await openCards(page)
  const titles = [...cardFiles(cardsFolder).values()].map(({ title }) => title)
  await expect(page.getByRole('radio')).toHaveCount(titles.length + 1)
  for (const title of [...titles, 'No card'])
    await expect(page.getByRole('radio', { name: title, exact: true })).toBeAttached()
  await expect(page.getByRole('radio', { name: 'Harbour star' })).toBeChecked()
})

for (const [title, id, mark] of [
  ['All holes', 'all-holes', 'selected'],
  ['No card', 'none', 'selected'],
  ['Blank', 'blank', 'plain'],
] as const)
  test(`with “${title}” every needle is ${mark}`, async ({ page }) => {
    await open(page, 'at=R100')
    await openCards(page)
    await page.locator('.card-choice').getByText(title, { exact: true }).click()
    await expect(page.locator('.card-choice')).toBeHidden()
    await expect(page.locator('.card-readout')).toHaveText(title)
    const { state, frame } = await settled(page)
    expect(state.card).toEqual(id === 'none' ? { kind: 'none' } : { kind: 'site', id })
    expect(new Set(frame.pass.came)).toEqual(new Set([mark]))
    expect(await marks(page, mark).count()).toBeGreaterThan(25)
    await expect(marks(page, mark === 'selected' ? 'plain' : 'selected')).toHaveCount(0)
    const high = picture(page).locator('.pin:not([data-high="low"])')
    await expect(high).toHaveCount(mark === 'selected' ? dimensions.columns : 0)
  })

test('cards are chosen by keys, one after another, and Escape gives the button back', async ({ page }) => {
  await open(page, 'at=R20')
  await cardButton(page).press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  await expect(page.getByRole('radio', { name: 'Harbour star' })).toBeFocused()
  await page.keyboard.press('ArrowDown')
  const next = await page.locator('.card-readout').innerText()
  expect(next).not.toBe('Harbour star')
  await page.keyboard.press('ArrowDown')
  await expect(page.locator('.card-choice')).toBeVisible()
  await expect(page.locator('.card-readout')).not.toHaveText(next)
  await page.keyboard.press('Escape')
  await expect(page.locator('.card-choice')).toBeHidden()
  await expect(cardButton(page)).toBeFocused()
})

test('a card that came with the link is read, and another can take its place', async ({ page }) => {
  await open(page, 'card=x.____AAAA&at=R20')
  await expect(page.locator('.card-readout')).toHaveText('a card of its own')
  await page.getByRole('button', { name: 'One row on' }).click()
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 2')
  await page.getByRole('button', { name: 'One row on' }).click()
  await expect(page.locator('.row-readout')).toHaveText('Pass 3, card row 1')
  await openCards(page)
  await page.locator('.card-choice').getByText('Buds', { exact: true }).click()
  expect((await settled(page)).state.card).toEqual({ kind: 'site', id: 'buds' })
})

test('a hole that the new card has no row for is dropped, and that is said', async ({ page }) => {
  await open(page, 'at=R20&break=card.torn.30.5&break=strip.3.seized')
  await openCards(page)
  await page.locator('.card-choice').getByText('Blank', { exact: true }).click()
  await expect(page.locator('.notice')).toContainText('a fault in a later row')
  await expect(page.locator('.chip')).toHaveText(/Strip 3 seized/)
})
