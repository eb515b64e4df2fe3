import { drag, expect, middle, type Page, test } from './page.ts'
import { stepCount, stepPlace } from './step-place.ts'

const chapter = './class/rockers-and-strips/'

/** Opens a window of a class beside another, and waits until it is alive. */
const open = async (beside: Page, address: string): Promise<Page> => {
  const page = await beside.context().newPage()
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await page.goto(address)
  await page.locator('.machine[data-live]').waitFor()
  return page
}

/** Opens a class view in the test's own page, and its speaker's window with the key that does so. */
const both = async (page: Page): Promise<Page> => {
  await page.goto(`${chapter}?class=abcd`)
  await page.locator('.machine[data-live]').waitFor()
  await expect(page.locator('.class-place')).toHaveText(stepPlace('rockers-and-strips', 1))
  const opening = page.waitForEvent('popup')
  await page.keyboard.press('n')
  const speaker = await opening
  await speaker.emulateMedia({ reducedMotion: 'reduce' })
  await expect(speaker.locator('.speaker-heard')).toHaveText('In step with the class.')
  return speaker
}

const happening = (page: Page): Promise<string | null> => page.locator('.happening').textContent()

const inStep = async (page: Page, speaker: Page, step: number): Promise<void> => {
  for (const [window, place] of [
    [page, '.class-place'],
    [speaker, '.speaker-place'],
  ] as const)
    await expect(window.locator(place)).toHaveText(stepPlace('rockers-and-strips', step))
  await expect.poll(async () => (await happening(page)) === (await happening(speaker))).toBe(true)
}

test('a step taken in one window is seen in the other, both ways, with its notes and its machine', async ({
  page,
}) => {
  const speaker = await both(page)
  await expect(page.getByText('Hold your hands')).toHaveCount(0)
  await expect(speaker.locator('[data-current] > .speaker-notes')).toContainText('Hold your hands')
  await page.keyboard.press('Home')
  await page.keyboard.press('End')
  await inStep(page, speaker, stepCount('rockers-and-strips'))
  await expect(speaker.locator('[data-current] > .speaker-notes')).toContainText('Run it slowly first')
  await expect(speaker.locator('.speaker-next')).toHaveText('reveals the answer')
  await speaker.getByRole('button', { name: 'Reveal' }).click()
  await expect(page.locator('.step[data-current] .predict[data-revealed]')).toHaveCount(1)
  await inStep(page, speaker, stepCount('rockers-and-strips'))
  await speaker.locator('h1').click()
  await speaker.keyboard.press('Home')
  await inStep(page, speaker, 1)
})

test('the carriage, a broken part, the blank screen and the pointer are the same in both', async ({
  page,
}) => {
  const speaker = await both(page)
  await speaker.locator('.carriage-slider').fill('123')
  await expect.poll(() => happening(page)).toContain('R24')
  await page.evaluate(() => {
    location.hash = 'at=R33&break=strip.3.seized'
  })
  await expect(speaker.locator('.chip')).toHaveText(/strip 3/i)
  await speaker.getByRole('button', { name: 'Dark' }).click()
  await expect(page.locator('.class-blank')).toBeVisible()
  await page.keyboard.press('.')
  await expect(speaker.locator('.speaker-covered')).toHaveText('')
  await page.keyboard.press('p')
  await expect(speaker.locator('.class-pointer')).toBeVisible()
  await page.keyboard.press('p')
  await expect(speaker.locator('.class-pointer')).toBeHidden()
})

test('a window that is opened again finds the class where it is', async ({ page }) => {
  const speaker = await both(page)
  await speaker.getByRole('button', { name: 'Next' }).click()
  await inStep(page, speaker, 2)
  await page.evaluate(() => {
    location.hash = 'at=R33&break=strip.3.seized'
  })
  await expect(speaker.locator('.chip')).toHaveCount(1)
  await speaker.reload()
  await expect(speaker.locator('.chip')).toHaveCount(1)
  await inStep(page, speaker, 2)
  await page.goto(`${chapter}?class=abcd`)
  await inStep(page, speaker, 2)
  await speaker.getByRole('button', { name: 'Back' }).click()
  await inStep(page, speaker, 1)
  await page.goto('./class/the-hold/?class=abcd')
  await expect(speaker.locator('h1')).toHaveText('Caught, or let go')
  await expect(speaker.locator('.speaker-place')).toHaveText(stepPlace('the-hold', 1))
})

test('what is asked for before the class has answered goes on from where the class is', async ({ page }) => {
  await page.goto(`${chapter}?class=abcd&step=three-share-one`)
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await expect(page.locator('.class-place')).toHaveText(stepPlace('rockers-and-strips', 2))
  // The class's window is slow to fetch what answers.
  const { promise: pressed, resolve: answer } = Promise.withResolvers<undefined>()
  const held: string[] = []
  await page.route('**/*.js', async (route) => {
    held.push(route.request().url())
    await pressed
    await route.continue()
  })
  const speaker = await open(page, `${chapter}speaker/?class=abcd`)
  await speaker.getByRole('button', { name: 'Next' }).click()
  answer(undefined)
  await inStep(page, speaker, 3)
  expect(held).toHaveLength(1)
})

test('classes of other ids stay apart', async ({ page }) => {
  const speaker = await both(page)
  const other = await open(page, `${chapter}?class=wxyz`)
  const others = await open(page, `${chapter}speaker/?class=wxyz`)
  await others.getByRole('button', { name: 'Next' }).click()
  await inStep(other, others, 2)
  await inStep(page, speaker, 1)
})

/** Numbers from 0 to below 1 that are the same each time. */
const randomly = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/** Where the class is and what comes next, as a window shows it. */
const placeIn = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const words = [...document.querySelectorAll('.class-place, .speaker-place, .speaker-next')]
    const revealed = document.querySelectorAll('[data-current] [data-revealed]').length
    return [...words.map(({ textContent }) => textContent), revealed, location.search].join(' | ')
  })

type Act = (page: Page) => Promise<unknown>

const dragIn =
  (selector: string): Act =>
  async (page) => {
    await drag(page, await middle(page.locator(selector).filter({ visible: true })), 40, -20)
  }

const pressButton =
  (name: string, ...then: readonly string[]): Act =>
  async (page) => {
    await page.getByRole('button', { name, exact: true }).filter({ visible: true }).first().click()
    for (const key of then) await page.keyboard.press(key)
  }

const pressKeys =
  (...keys: readonly string[]): Act =>
  async (page) => {
    for (const key of keys) await page.keyboard.press(key)
  }

const reload: Act = async (page) => {
  await page.reload()
  await page.locator('.machine[data-live]').waitFor()
}

/** What may be done with a window of a class before the clicker is pressed again; Tab is followed by Esc. */
const acts: Readonly<Record<string, readonly Act[]>> = {
  speaker: [
    dragIn('.picture'),
    dragIn('.carriage-slider'),
    pressButton('Play'),
    pressButton('Start again'),
    async (page) => {
      await page.locator('.more-controls summary').click()
      await pressButton('Break a part')(page)
    },
    async (page) => {
      await page.locator('.more-controls summary').click()
    },
    pressButton('Pointer P'),
    pressButton('Dark .', '.'),
    pressKeys('Tab', 'Tab', 'Tab', 'Tab', 'Escape'),
    reload,
  ],
  view: [
    dragIn('.picture'),
    dragIn('.carriage-slider'),
    pressButton('Play'),
    pressButton('Keys'),
    pressButton('Keys', 'Escape'),
    pressKeys('p'),
    pressKeys('Tab', 'Tab', 'Tab', 'Escape'),
    reload,
  ],
}

for (const [n, window] of ['speaker', 'view'].entries())
  test(`a clicker leads the class from the ${window} after mouse, keys and reload in any order`, async ({
    page,
  }) => {
    const speaker = await both(page)
    const here = window === 'view' ? page : speaker
    await here.bringToFront()
    await here.keyboard.press('PageDown')
    const random = randomly(n + 1)
    const order = [...(acts[window] ?? [])].map((act) => ({ act, at: random() })).sort((a, b) => a.at - b.at)
    for (const { act } of order) {
      await act(here)
      const before = await placeIn(here)
      await here.keyboard.press('PageDown')
      await expect.poll(() => placeIn(here)).not.toBe(before)
      await here.keyboard.press('PageUp')
      await expect.poll(() => placeIn(here)).toBe(before)
    }
  })
