import { describeFrame } from '@/words/frame-description.ts'
import { momentOf } from './model.ts'
import { click, edit, expect, frames, middle, open, picture, settled, test, type Page } from './page.ts'

test.use({ motion: 'no-preference' })

const home = momentOf('at=R8')

const place = async (page: Page): Promise<number> =>
  Number(await page.locator('.carriage-slider').inputValue())

const expectStopped = async (page: Page): Promise<void> => {
  await expect(page.locator('.play')).toHaveText('Play')
  const before = await place(page)
  await frames(page, 15)
  expect(await place(page)).toBe(before)
}

test('it waits for the reader, with strip 3 seized, and plays when asked', async ({ page }) => {
  await open(page)
  await expectStopped(page)
  await expect(page.locator('.chip')).toHaveText(/Strip 3 seized/)
  await page.locator('.play').click()
  await expect.poll(() => place(page)).toBeGreaterThan(home.state.at)
  expect((await settled(page)).state.faults).toEqual([{ kind: 'strip.seized', at: [3], amount: null }])
})

test('with reduced motion it waits for the reader, and plays when asked', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page)
  await expectStopped(page)
  expect(await place(page)).toBe(home.state.at)
  await page.locator('.play').click()
  await expect.poll(() => place(page)).toBeGreaterThan(home.state.at)
})

test('a link shows its state and does not run away from it', async ({ page }) => {
  await open(page, 'at=R20')
  await expectStopped(page)
})

const hands: Record<string, (page: Page) => Promise<void>> = {
  'any key': (page) => page.locator('.copy').press('x'),
  'an arrow key on the slider': (page) => page.locator('.carriage-slider').press('ArrowRight'),
  'an arrow key among the parts': (page) => page.locator('.parts').press('ArrowDown'),
  'a click on a part': (page) => click(page, 'strip.5'),
  'a click on words': (page) => page.locator('.machine h2').first().click(),
  'taking hold of the carriage': async (page) => {
    const { x, y } = await middle(picture(page).locator('.carriage'))
    await page.mouse.move(x, y)
    await page.mouse.down()
  },
  'opening the cards': (page) => page.locator('[aria-labelledby~="card-name"]').click(),
  'opening the panel': (page) => page.locator('.break').click(),
  'another row': (page) => page.locator('.row-forward').click(),
  'the speed slider': (page) => page.locator('.speed').press('ArrowRight'),
}
test('any drag, key or click stops the playing at once', async ({ page }) => {
  await open(page, 'at=R8&break=strip.3.seized')
  await page.locator('.play').click()
  await expect(page.locator('.play')).toHaveText('Pause')
  for (const [name, hand] of Object.entries(hands))
    await test.step(name, async () => {
      await hand(page)
      await expectStopped(page)
      await page.mouse.up()
      await page.keyboard.press('Escape')
      await page.keyboard.press('Escape')
      await page.locator('.play').click()
      await expect(page.locator('.play')).toHaveText('Pause')
    })
  await edit(page, 'at=L50')
  await expect(page.locator('.carriage-readout')).toHaveText('L50, moving right')
  await expectStopped(page)
})

test('it pauses and goes on from where it stands', async ({ page }) => {
  await open(page, 'at=R8&break=strip.3.seized')
  await page.locator('.play').click()
  await expect(page.locator('.play')).toHaveText('Pause')
  await page.locator('.play').click()
  await expectStopped(page)
  const stood = await place(page)
  await page.locator('.play').press('Enter')
  await expect.poll(() => place(page)).toBeGreaterThan(stood)
  expect(await place(page)).toBeLessThan(stood + 5)
})

test('it plays as much slower than life as chosen, also when that is changed on the way', async ({
  page,
}) => {
  await open(page, 'at=L100')
  const travelled = async (): Promise<number> => {
    const before = await place(page)
    const since = Date.now()
    await expect.poll(() => place(page), { intervals: [50] }).toBeGreaterThan(before + 2.5)
    return ((await place(page)) - before) / ((Date.now() - since) / 1000)
  }
  await page.locator('.play').click()
  await page.locator('.slowness').selectOption('20')
  const slow = await travelled()
  await page.locator('.slowness').selectOption('5')
  const fast = await travelled()
  await expect(page.locator('.play')).toHaveText('Pause')
  // 500 mm/s over 4.5 mm a needle: 111 needles a second, 20 and 5 times slower.
  expect(slow).toBeGreaterThan(3.5)
  expect(slow).toBeLessThan(7.5)
  expect(fast).toBeGreaterThan(15)
  expect(fast).toBeLessThan(30)
})

test('at the end of a pass it turns beyond the mark and plays the next row', async ({ page }) => {
  await open(page, 'at=R109')
  await page.locator('.slowness').selectOption('5')
  await page.locator('.play').click()
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 2')
  const turned = await place(page)
  await expect.poll(() => place(page)).toBeLessThan(turned)
  await expect(page.locator('.chips')).toHaveText('nothing')
})

test('the sentence stays long enough to be read, and is true as soon as it stops', async ({ page }) => {
  await open(page, 'at=L100')
  await page.locator('.slowness').selectOption('20')
  const words = page.locator('.happening')
  await words.evaluate((element) => {
    const times: number[] = []
    Object.assign(window, { times })
    new MutationObserver(() => times.push(performance.now())).observe(element, {
      characterData: true,
      childList: true,
      subtree: true,
    })
  })
  await page.locator('.play').click()
  await page.waitForTimeout(7000)
  await page.locator('.play').click()
  const { frame } = await settled(page)
  await expect(words).toHaveText(describeFrame(frame))
  const times = await page.evaluate(() => Reflect.get(window, 'times') as number[])
  expect(times.length).toBeGreaterThan(2)
  // The last one is that of the stop.
  const waits = times.slice(1, -1).map((time, n) => time - (times[n] ?? 0))
  expect(Math.min(...waits)).toBeGreaterThan(2900)
})

test('at the turn the pins go down, the card steps, and the pins come up', async ({ page }) => {
  await open(page, 'at=R109')
  const high = (): Promise<number> => picture(page).locator('.pin[data-high="high"]').count()
  const asked = momentOf('pass=2&at=R112').frame.pinHeights.filter((height) => height > 2).length
  expect(await high()).toBeGreaterThan(5)
  await page.locator('.slowness').selectOption('5')
  await page.locator('.play').click()
  await expect.poll(high, { intervals: [30] }).toBe(0)
  await expect.poll(high, { intervals: [30] }).toBe(asked)
  await expect(page.locator('.row-readout')).toHaveText('Pass 2, card row 2')
})
