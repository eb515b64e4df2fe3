import { parsePart } from '@/mechanism/part.ts'
import { describePart } from '@/words/part-description.ts'
import { momentOf } from './model.ts'
import { click, expect, middle, open, part, picture, lastingTest as test, type Page } from './page.ts'

const state = 'at=R20&break=strip.3.seized'
const { run, frame } = momentOf(state)
const ids = ['card', 'pin.5', 'sweep', 'rocker.3', 'strip.3', 'strip.4', 'presser', 'gate.1', 'needle.R11']

const hover = async (page: Page, id: string): Promise<void> => {
  // A rocker's rod reaches down over the strips; its lever is what a pointer finds.
  const found = id.startsWith('rocker') ? picture(page).locator(`.rocker[data-part="${id}"]`) : part(page, id)
  const { x, y } = await middle(found)
  await page.mouse.move(x, y)
}

const expectTip = async (page: Page, id: string): Promise<void> => {
  const { name, doing } = describePart(run, frame, parsePart(id)!)
  await expect(page.locator('.tip-name')).toHaveText(name)
  await expect(page.locator('.tip-doing')).toHaveText(doing)
  await expect(page.locator('.tip')).toBeInViewport({ ratio: 1 })
}

test('a pointer over a part brings up its name and what it is doing', async ({ page }) => {
  await open(page, state)
  for (const id of ids) {
    await hover(page, id)
    await expectTip(page, id)
  }
  await page.mouse.move(5, 5)
  await expect(page.locator('.tip')).toBeHidden()
})

test('a click keeps the tip, and it says what the part does as the carriage moves on', async ({ page }) => {
  await open(page, 'at=R1')
  await click(page, 'pin.3')
  await page.mouse.move(5, 5)
  const tip = page.locator('.tip')
  await expect(tip).toContainText('Pin 3')
  await expect(tip).not.toContainText('The sweep pushes it')
  await page.locator('.carriage-slider').focus()
  for (let n = 0; n < 6; n++) await page.keyboard.press('ArrowRight')
  await expect(tip).toContainText('The sweep pushes it')
})

test('Escape, or a click beside it, lets a tip go', async ({ page }) => {
  await open(page, state)
  await click(page, 'strip.5')
  await expect(page.locator('.tip')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.locator('.tip')).toBeHidden()
  await click(page, 'strip.5')
  await page.getByRole('heading', { name: 'Move the carriage yourself' }).click()
  await expect(page.locator('.tip')).toBeHidden()
})

test('arrow keys walk from part to part along the chain, and each is spoken', async ({ page }) => {
  await open(page, state)
  await page.locator('.parts').focus()
  const seen: string[] = []
  for (const key of ['ArrowDown', 'ArrowDown', 'Home', 'ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown']) {
    await page.keyboard.press(key)
    const name = await page.locator('.tip-name').innerText()
    seen.push(name)
    const doing = await page.locator('.tip-doing').innerText()
    await expect(page.locator('.spoken')).toHaveText(`${name}. ${doing}`)
    await expect(page.locator('.ring')).toBeVisible()
  }
  expect(seen).toEqual(['The card', seen[1], 'Pin 1', 'Pin 2', 'The sweep', seen[5], seen[6]])
  expect(seen[5]).toMatch(/^Rocker \d+$/)
  expect(seen[6]).toMatch(/^Strip \d$/)
  await page.keyboard.press('End')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  await expect(page.locator('.tip-name')).toHaveText(/^Needle /)
})

test('the ring stands around the part that the tip names', async ({ page }) => {
  await open(page, state)
  for (const id of ['pin.5', 'needle.R11', 'strip.4']) {
    await hover(page, id)
    const [ring, own] = await Promise.all([page.locator('.ring').boundingBox(), part(page, id).boundingBox()])
    const x = (own?.x ?? NaN) + (own?.width ?? NaN) / 2
    const y = (own?.y ?? NaN) + (own?.height ?? NaN) / 2
    expect(x).toBeGreaterThan(ring?.x ?? NaN)
    expect(x).toBeLessThan((ring?.x ?? NaN) + (ring?.width ?? NaN))
    expect(y).toBeGreaterThan(ring?.y ?? NaN)
    expect(y).toBeLessThan((ring?.y ?? NaN) + (ring?.height ?? NaN))
  }
})
