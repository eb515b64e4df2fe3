import { describeFrame } from '@/words/frame-description.ts'
import { momentOf } from './model.ts'
import {
  drag,
  edit,
  expect,
  grip,
  needlePixels,
  open,
  picture,
  settled,
  lastingTest as test,
} from './page.ts'

test('dragging the carriage in the drawing moves it as far as the hand, and everything follows', async ({
  page,
}) => {
  await open(page, 'at=R20&break=strip.3.seized')
  const pixels = await needlePixels(page)
  await drag(page, await grip(page), 6 * pixels)
  const { state, frame } = await settled(page)
  expect(state.at).toBeGreaterThan(momentOf('at=R25.7').state.at)
  expect(state.at).toBeLessThan(momentOf('at=R26.3').state.at)
  await expect(page.locator('.carriage-readout')).toHaveText('R26, moving right')
  await expect(page.locator('.happening')).toHaveText(describeFrame(frame))
  expect(Number(await page.locator('.carriage-slider').inputValue())).toBeCloseTo(state.at, 0)
  await expect(page.locator('.tip')).toBeHidden()
})

test('dragging back winds the pass back and forgets what had been missed on the way', async ({ page }) => {
  await open(page, 'at=R20&break=strip.3.seized')
  await drag(page, await grip(page), -12 * (await needlePixels(page)))
  const { state, frame } = await settled(page)
  expect(state.pass).toBe(1)
  expect(frame.departures.length).toBeLessThan(
    momentOf('at=R20&break=strip.3.seized').frame.departures.length,
  )
  await expect(page.locator('.happening')).toHaveText(describeFrame(frame))
})

test('a press on the carriage that does not move leaves it where it is', async ({ page }) => {
  await open(page, 'at=R20.5')
  await drag(page, await grip(page), 0)
  await expect(page.locator('.carriage-readout')).toHaveText('R21, moving right')
  expect((await settled(page)).state.at).toBe(momentOf('at=R20.5').state.at)
})

test('beyond the turn mark the carriage turns and the card goes on by a row', async ({ page }) => {
  await open(page, 'at=R108')
  const pixels = await needlePixels(page)
  await drag(page, await grip(page), 6 * pixels, -4 * pixels)
  const { state, frame } = await settled(page)
  expect(state).toMatchObject({ pass: 2, faults: [] })
  expect(frame.pass.row).toBe(2)
  expect(state.at).toBeLessThan(momentOf('pass=2').state.at - 5)
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 2')
  await expect(page.locator('.carriage-readout')).toContainText('moving left')
})

test('short of the turn mark and back is a short turn: the row stays, and it is among the broken things', async ({
  page,
}) => {
  await open(page, 'at=R98')
  const pixels = await needlePixels(page)
  await drag(page, await grip(page), 6 * pixels, -3 * pixels)
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 1')
  await expect(page.locator('.chip')).toHaveText(/Turned short before pass 2/)
  await expect(page.locator('.carriage-readout')).toContainText('moving left')
  expect((await settled(page)).state.faults).toEqual([{ kind: 'turn.short', at: [2], amount: null }])

  await edit(page, 'at=R103&break=turn.short.2')
  await page.locator('.carriage-slider').press('PageDown')
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 1')
  await expect(page.locator('.chip')).toHaveCount(1)
})

test('a carriage held at the edge runs along the bed, and the window never leaves it', async ({ page }) => {
  await open(page, 'at=R88')
  const box = await picture(page).boundingBox()
  const hold = await grip(page)
  await page.mouse.move(hold.x, hold.y)
  await page.mouse.down()
  await page.mouse.move((box?.x ?? 0) + (box?.width ?? 0) - 30, hold.y, { steps: 6 })
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 2')
  await expect(picture(page).locator('[data-part="needle.R100"]').first()).toBeAttached()
  await expect(picture(page).locator('.needle:not([display="none"])').first()).toBeAttached()
  const shown = await picture(page)
    .locator('.map-window')
    .evaluate((window) => Number(window.getAttribute('width')))
  expect(shown).toBeGreaterThan(100)
  await page.mouse.up()
})

test('the map jumps anywhere, drags along, and never turns the machine', async ({ page }) => {
  await open(page, 'at=R20')
  const map = async (name: string): Promise<{ x: number; y: number }> => {
    const label = await picture(page)
      .locator('.map-name', { hasText: new RegExp(`^${name}$`) })
      .boundingBox()
    return { x: (label?.x ?? 0) + (label?.width ?? 0) / 2, y: (label?.y ?? 0) - 8 }
  }
  const [left, right] = [await map('L100'), await map('R50')]
  await page.mouse.click(right.x, right.y)
  await expect(page.locator('.carriage-readout')).toHaveText(/^R(49|50|51), /)
  await page.mouse.move(right.x, right.y)
  await page.mouse.down()
  await page.mouse.move(left.x, left.y, { steps: 8 })
  await page.mouse.up()
  await expect(page.locator('.carriage-readout')).toHaveText(/^L(99|100|101), moving right/)

  const box = await picture(page).boundingBox()
  await page.mouse.click((box?.x ?? 0) + (box?.width ?? 0) - 2, right.y)
  expect((await settled(page)).state).toMatchObject({ pass: 1, faults: [] })
})
