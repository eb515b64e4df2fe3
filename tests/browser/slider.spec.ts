import { passEnds, wholeBed } from '@/mechanism/bed.ts'
import { describeFrame } from '@/words/frame-description.ts'
import { momentOf } from './model.ts'
import { expect, open, settled, lastingTest as test, type Page } from './page.ts'

const press = async (page: Page, ...keys: readonly string[]): Promise<void> => {
  for (const key of keys) await page.locator('.carriage-slider').press(key)
}

/** Source: WAI-ARIA Authoring Practices, slider pattern. */
test('the slider answers the keys of a slider: arrows one step, Page keys more, Home and End the ends', async ({
  page,
}) => {
  await open(page, 'at=R20')
  const start = momentOf('at=R20').state.at
  let at = start
  for (const [key, by] of [
    ['ArrowRight', 0.25],
    ['ArrowUp', 0.25],
    ['ArrowLeft', -0.25],
    ['ArrowDown', -0.25],
    ['PageUp', 8],
    ['PageDown', -8],
    ['PageDown', -8],
  ] as const) {
    await press(page, key)
    at += by
    expect(Number(await page.locator('.carriage-slider').inputValue()), key).toBe(at)
  }
  const { state, frame } = await settled(page)
  expect(state.at).toBe(at)
  await expect(page.locator('.happening')).toHaveText(describeFrame(frame))

  await press(page, 'Home')
  expect((await settled(page)).state).toMatchObject({ pass: 1, at: passEnds(1, wholeBed).start })
  await press(page, 'End')
  expect((await settled(page)).state).toMatchObject({ pass: 2, at: passEnds(1, wholeBed).end, faults: [] })
})

test('in a pass to the left, End is where it starts and Home where it turns', async ({ page }) => {
  await open(page, 'pass=2&at=R20')
  await press(page, 'End')
  expect((await settled(page)).state).toMatchObject({ pass: 2, at: passEnds(2, wholeBed).start })
  await press(page, 'Home')
  expect((await settled(page)).state).toMatchObject({ pass: 3, at: passEnds(2, wholeBed).end, faults: [] })
  await expect(page.locator('.row-readout')).toHaveText('Pass 3, card row 3')
})

test('Page keys past the last needle and back make a short turn', async ({ page }) => {
  await open(page, 'at=R97')
  await press(page, 'PageUp', 'PageDown')
  const { state, frame } = await settled(page)
  expect(state.faults).toEqual([{ kind: 'turn.short', at: [2], amount: null }])
  expect(frame.pass).toMatchObject({ pass: 2, row: 1 })
  await expect(page.locator('.chip')).toHaveText(/Turned short before pass 2/)
  await expect(page.locator('.notice')).toHaveText('Turned short before pass 2: the card keeps its row.')
})

test('the slider says to a screen reader the needle, the pass and the way', async ({ page }) => {
  await open(page, 'pass=4&at=L7')
  const slider = page.getByRole('slider', { name: 'Carriage' })
  await expect(slider).toHaveAttribute('aria-valuetext', 'L7, pass 4, moving left')
  await press(page, 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft')
  await expect(slider).toHaveAttribute('aria-valuetext', 'L8, pass 4, moving left')
})

test('the slider takes a drag of the mouse', async ({ page }) => {
  await open(page, 'at=R20')
  const box = await page.locator('.carriage-slider').boundingBox()
  if (!box) throw new Error('no slider')
  await page.mouse.move(box.x + box.width * 0.6, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width * 0.25, box.y + box.height / 2, { steps: 8 })
  await page.mouse.up()
  const { state } = await settled(page)
  expect(state.at).toBeGreaterThan(30)
  expect(state.at).toBeLessThan(60)
})

test('a reader who does not see hears the sentence once the carriage rests, not at every step', async ({
  page,
}) => {
  await open(page, 'at=R20&break=strip.3.seized')
  // What is said is taken away again after a while.
  await page.locator('.spoken').evaluate((spoken) => {
    const heard: string[] = []
    Object.assign(window, { heard })
    new MutationObserver(() => {
      if (spoken.textContent !== '') heard.push(spoken.textContent)
    }).observe(spoken, { childList: true, characterData: true, subtree: true })
  })
  const heard = (): Promise<string[]> => page.evaluate(() => [...(Reflect.get(window, 'heard') as string[])])
  for (let n = 0; n < 30; n++) await press(page, 'ArrowRight')
  const sentence = await page.locator('.happening').innerText()
  await expect.poll(async () => (await heard()).at(-1)).toBe(sentence)
  expect((await heard()).length).toBeLessThanOrEqual(2)
  await expect(page.locator('.spoken')).toHaveAttribute('aria-live', 'polite')
})
