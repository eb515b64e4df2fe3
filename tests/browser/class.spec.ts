import { readdirSync, readFileSync } from 'node:fs'
import { outlineOf } from '@/site/chapter-outline.ts'
import { makersOf, questionOf } from '@/lesson/chapters.ts'
import { mark, rightAnswer } from '@/lesson/marking.ts'
import type { Kind, Question } from '@/lesson/question.ts'
import { read } from '@/link/read.ts'
import { write } from '@/link/write.ts'
import { describeFrame } from '@/words/frame-description.ts'
import { library, momentOf } from './model.ts'
import { expect, type Page, watch, watchScripts, test as freshTest, lastingTest as test } from './page.ts'
import { scanned } from './scan.ts'
import { inkShare } from './scene-picture.ts'
import { stepPlace } from './step-place.ts'

const folder = new URL('../../content/chapters/', import.meta.url)

/** A chapter's text as it is written. */
const textOf = (slug: string): string => {
  const file = readdirSync(folder).find((name) => name.endsWith(`-${slug}.mdx`)) ?? ''
  return readFileSync(new URL(file, folder), 'utf8')
}

const slugs = readdirSync(folder).map((name) => name.replace(/^\d+-|\.mdx$/g, ''))

/** A state's link text as the site writes it, but for the note. */
const same = (text: string): string => write(read(text, library).state, library)

const place = (page: Page): Promise<string | null> => page.locator('.class-place').textContent()

const openClass = async (page: Page, slug: string, rest = ''): Promise<void> => {
  await page.goto(`./class/${slug}/${rest}`)
  // The place is announced a moment before keys are heard.
  await expect(page.locator('.class-view[data-live]')).toBeVisible()
  await expect(page.locator('.class-place')).not.toBeEmpty()
  await page.evaluate(() => document.fonts.ready.then(() => undefined))
}

test('a step’s former address leads to the step that took its place', async ({ page }) => {
  await openClass(page, 'the-hold', '?step=strip-goes-home')
  await expect(page).toHaveURL(/[?&]step=held-until-the-gate/)
  await expect(page.locator('.step[data-current]')).toHaveAttribute('id', 'held-until-the-gate')
})

test('the first step’s machine is in the picture before anybody does anything', async ({ page }) => {
  await openClass(page, 'feeler-pins')
  const drawing = page.locator('.drawing[data-figure="scene"]')
  await expect(drawing.locator('svg').filter({ visible: true })).toHaveCount(1)
  await expect.poll(() => inkShare(drawing)).toBeGreaterThan(0.02)
})

/** Goes on to the last part of a text too long for one screen. */
const readOn = async (page: Page): Promise<void> => {
  while (/part (\d) of (?!\1)/.test((await place(page)) ?? '')) await page.keyboard.press('PageDown')
}

/** The machine is in this state: the sentence about it, which only the controls show, says so. */
const expectMachine = (page: Page, text: string): Promise<void> =>
  expect(page.locator('.happening')).toContainText(describeFrame(momentOf(text).frame))

/** The machine's state as the address has it, once it has been written there. */
const expectState = (page: Page, text: string): Promise<void> =>
  expect.poll(() => same(new URL(page.url()).hash.slice(1))).toBe(same(text))

/**
 * Walks on through a class view as its keys do, and gives what is wrong on each screen: text under 3 % of the screen's
 * height, text that is cut off, anything to be scrolled.
 */
const faultsOnTheWay = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const wrongs: string[] = []
    const said = (): string => document.querySelector('.class-said')?.textContent ?? ''
    const isThere = (): boolean => {
      const asked = new URLSearchParams(location.search).get('quiz')?.split('.')[1]
      const words = document.querySelector('.class-place')?.textContent ?? ''
      return asked === undefined ? words.startsWith('Step') : words.startsWith(`Question ${asked} `)
    }
    const shown = (): string => `${document.querySelector('.class-place')?.textContent} ${location.search}`
    const body = document.querySelector('.class-body')
    const sizeOf = (element: Element): number => {
      const size = parseFloat(getComputedStyle(element).fontSize)
      const matrix = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null
      return matrix ? size * Math.hypot(matrix.a, matrix.b) : size
    }
    const wrongsOf = (element: Element): string[] => {
      const { left, top, right, bottom } = element.getBoundingClientRect()
      const isOff = left < -1 || top < -1 || right > innerWidth + 1 || bottom > innerHeight + 1
      // Who sits six times the picture's height away reads characters of 2.8 % of it: viewing-distance practice.
      const isSmall = sizeOf(element) < 0.03 * innerHeight
      return [...(isSmall ? ['too small'] : []), ...(isOff && !element.closest('svg') ? ['cut off'] : [])]
    }
    /** What has a text of its own: of a picture's many lines, none. */
    const textsIn = (within: Element | null): Set<Element> => {
      const found = new Set<Element>()
      const texts = document.createTreeWalker(within ?? document, NodeFilter.SHOW_TEXT)
      while (texts.nextNode()) {
        const { parentElement, textContent } = texts.currentNode
        if (parentElement && textContent?.trim()) found.add(parentElement)
      }
      return found
    }
    const isRead = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
      !element.closest('script, noscript, .unseen, [popover]')
    for (let n = 0; n < 80 && said() === ''; n++) {
      const where = document.querySelector('.class-place')?.textContent ?? ''
      for (const element of textsIn(document.querySelector('.class-view')))
        if (isRead(element))
          for (const wrong of wrongsOf(element))
            wrongs.push(`${where}: ${wrong}: ${element.textContent.trim().slice(0, 40)}`)
      for (const box of [body, document.documentElement])
        if (box && (box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1))
          wrongs.push(`${where}: does not fit`)
      const before = shown()
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'PageDown', bubbles: true }))
      // What does as a key says, and questions, are fetched: they come a little later than the key.
      for (let frame = 0; frame < 60; frame++) {
        await new Promise(requestAnimationFrame)
        if ((shown() !== before && isThere()) || said() !== '') break
      }
      await new Promise(requestAnimationFrame)
    }
    if (said() !== 'This is the end of the chapter.') wrongs.push('there is no end')
    return wrongs
  })

test('a whole chapter is shown by the keys of a clicker, each answer after its question', async ({
  page,
}) => {
  const slug = 'rockers-and-strips'
  const { steps } = outlineOf(textOf(slug))
  await openClass(page, slug)
  for (const [n, step] of steps.entries()) {
    await expect(page.locator('.class-body h2').filter({ visible: true })).toHaveText(step.title)
    await expect(page.locator('.class-place')).toHaveText(new RegExp(`^Step ${n + 1} of ${steps.length}`))
    expect(new URL(page.url()).searchParams.get('step')).toBe(step.id)
    await expect(page.locator('.figure')).toHaveAttribute('data-shown', step.figure)
    const [prediction] = step.predictions
    if (prediction) {
      await expectMachine(page, step.state)
      await readOn(page)
      await expect(page.locator('.predict').filter({ visible: true })).toHaveCount(1)
      await expect(page.locator('.predict-answer, .happening').filter({ visible: true })).toHaveCount(0)
      await page.keyboard.press('PageDown')
      await expectMachine(page, prediction.attributes.get('state') ?? '')
      await expect(page.locator('.predict-answer').filter({ visible: true })).not.toBeEmpty()
    }
    await readOn(page)
    await page.keyboard.press('PageDown')
  }
  await expect(page.locator('.class-place')).toHaveText(/^Question 1 of/)
  for (let n = 0; n < 40 && (await page.locator('.class-said').textContent()) === ''; n++)
    await page.keyboard.press('PageUp')
  await expect(page.locator('.class-said')).toHaveText('This is the beginning of the chapter.')
  await expect(page.locator('.class-place')).toHaveText(/^Step 1 of/)
})

for (const [n, slug] of slugs.entries())
  freshTest(`nothing is small, cut off or to be scrolled in ${slug}`, async ({ page }) => {
    const [width, height] = n % 2 === 0 ? [1280, 720] : [1024, 768]
    await page.setViewportSize({ width, height })
    // The same questions each time.
    await page.addInitScript(() => {
      Math.random = () => 0.5
    })
    await openClass(page, slug)
    expect(await faultsOnTheWay(page)).toEqual([])
  })

test('other keys blank the screen, point, and help, and leave controls their own', async ({ page }) => {
  await openClass(page, 'the-hold')
  for (const key of ['b', '.']) {
    await page.keyboard.press(key)
    await expect(page.locator('.class-blank')).toBeVisible()
    await page.keyboard.press('Space')
    await expect(page.locator('.class-blank')).toBeHidden()
  }
  await expect(page.locator('.class-place')).toHaveText(/^Step 1 of/)
  await page.keyboard.press('p')
  await page.mouse.move(900, 200)
  const ring = await page.locator('.class-pointer').boundingBox()
  expect((ring?.x ?? 0) + (ring?.width ?? 0) / 2).toBeCloseTo(900, 0)
  expect((ring?.y ?? 0) + (ring?.height ?? 0) / 2).toBeCloseTo(200, 0)
  await page.keyboard.press('p')
  await expect(page.locator('.class-pointer')).toBeHidden()
  await page.keyboard.press('k')
  await expect(page.getByRole('dialog', { name: 'Keys of a clicker' })).toBeVisible()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('k')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await page.keyboard.press('Control+ArrowRight')
  const slider = page.getByRole('slider', { name: 'Carriage' })
  const before = await slider.inputValue()
  await slider.focus()
  await page.keyboard.press('ArrowRight')
  expect(Number(await slider.inputValue())).toBeGreaterThan(Number(before))
  await expect(page.locator('.class-place')).toHaveText(/^Step 1 of/)
  await page.keyboard.press('Escape')
  await page.keyboard.press('End')
  await expect(page.locator('.class-place')).toHaveText(stepPlace('the-hold'))
})

/** Source: WCAG 2.2, 2.1.4. */
test('letters and signs can be turned off as keys, and stay off', async ({ page }) => {
  await openClass(page, 'the-hold')
  await page.keyboard.press('k')
  await page.getByLabel('Letters and signs are keys too').uncheck()
  await page.keyboard.press('Escape')
  await page.reload()
  await expect(page.locator('.class-place')).toHaveText(/^Step 1 of/)
  for (const key of ['.', 'k', 'w', 'q']) await page.keyboard.press(key)
  for (const panel of ['.class-blank', '.class-help', '.class-code'])
    await expect(page.locator(panel)).toBeHidden()
  await page.keyboard.press('End')
  await expect(page.locator('.class-place')).toHaveText(stepPlace('the-hold'))
  await page.getByRole('button', { name: 'Keys' }).click()
  await page.getByLabel('Letters and signs are keys too').check()
  for (const key of ['Escape', 'Escape', 'b']) await page.keyboard.press(key)
  await expect(page.locator('.class-blank')).toBeVisible()
})

test('the carriage and broken parts are the class’s too, and a reload comes back to them', async ({
  page,
}) => {
  await openClass(page, 'rockers-and-strips', '?step=three-share-one')
  await page.getByRole('button', { name: 'Machine' }).click()
  await page.getByRole('button', { name: 'Break a part' }).click()
  await page.getByLabel('Find a fault').fill('seized')
  await page.keyboard.press('Enter')
  await page.locator('.breaker').getByLabel('Strip', { exact: true }).fill('7')
  await page.keyboard.press('Enter')
  await expect(page.locator('.chip')).toHaveText(/strip 7/i)
  await page.getByRole('button', { name: 'Close' }).filter({ visible: true }).click()
  await expectState(page, 'at=R23&break=strip.7.seized')
  await page.reload()
  await expect(page.locator('.class-place')).toHaveText(stepPlace('rockers-and-strips', 2))
  await expect(page.locator('.chip')).toHaveText(/strip 7/i)
  await page.keyboard.press('PageDown')
  await expect(page.locator('.chip')).toHaveCount(0)
})

freshTest(
  'a phone follows along from the code, to exactly what is on the screen',
  async ({ page, browser, baseURL }) => {
    await openClass(page, 'the-cam-gate', '?step=time-to-rise')
    await page.getByRole('slider', { name: 'Carriage' }).fill('130')
    await page.evaluate(() => {
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
    })
    await page.keyboard.press('q')
    const code = page.locator('.class-code svg')
    expect((await code.locator('path').boundingBox())?.height ?? 0).toBeGreaterThan(0.6 * 720)
    // From the back of the room the screen is small.
    await page.setViewportSize({ width: 640, height: 360 })
    const link = (await scanned(code)) ?? ''
    await expect(page.locator('.class-code-text')).toHaveText(link.replace(/^https?:\/\/|#.*$/g, ''))
    const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
    const phone = await context.newPage()
    const wrongs = watch(phone, baseURL ?? '')
    await phone.goto(link)
    await expect(phone.locator('.step[data-current]')).toHaveAttribute('id', 'time-to-rise')
    await expect(phone.locator('.happening')).toHaveText(
      (await page.locator('.happening').textContent()) ?? '',
    )
    expect(same(new URL(link).hash.slice(1))).toBe(same('at=R31&break=needle.R7.stiff'))
    expect(wrongs).toEqual([])
    await context.close()
    await page.keyboard.press('PageDown')
    await expect(page.locator('.class-code')).toBeHidden()
    await expect(page.locator('.class-place')).toHaveText(/^Step 9 of/)
  },
)

freshTest('the code of a question leads a phone to that question', async ({ page, browser, baseURL }) => {
  await openClass(page, 'the-cam-gate', '?quiz=7.2')
  await expect(page.locator('.class-prompt')).toBeVisible()
  await page.keyboard.press('q')
  await page.setViewportSize({ width: 640, height: 360 })
  const link = (await scanned(page.locator('.class-code svg'))) ?? ''
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
  const phone = await context.newPage()
  await phone.goto(link)
  await expect(phone.locator('.class-prompt')).toHaveText(
    (await page.locator('.class-prompt').textContent()) ?? '',
  )
  expect(new URL(phone.url()).searchParams.get('class')).not.toBe(
    new URL(page.url()).searchParams.get('class'),
  )
  await context.close()
})

/** The reason for the right answer, and the state that proves it. */
const proofOf = <K extends Kind>(
  question: Question<K> & { readonly kind: K },
): { reason: string; show: string } => mark<K>(question, rightAnswer<K>(question))

test('the class quiz asks, waits, and proves the answer on the machine', async ({ page }) => {
  const seed = 5
  await openClass(page, 'the-cam-gate', `?quiz=${seed}.1`)
  for (const [n, maker] of makersOf(7).entries()) {
    const question = questionOf(maker, seed, library)
    if (!question) throw new Error(`there is no question ${maker}`)
    const { reason, show } = proofOf(question)
    await expect(page.locator('.class-prompt')).toHaveText(question.prompt)
    await expect(page.locator('.class-question')).not.toContainText(reason)
    await expect(page.locator('.picture')).toBeHidden()
    await readOn(page)
    await page.keyboard.press(n === 0 ? 'r' : 'PageDown')
    await expect(page.locator('.class-question')).toContainText(reason)
    await expect(page.locator('.picture')).toBeVisible()
    await expectState(page, show)
    await page.reload()
    await expect(page.locator('.class-question')).toContainText(reason)
    await readOn(page)
    await page.keyboard.press('PageDown')
  }
  await page.keyboard.press('k')
  await page.getByRole('link', { name: 'Class quiz' }).click()
  await expect(page.locator('.class-place')).toHaveText('Question 1 of 5')
})

freshTest('the first sight of a class view takes at most 70 kB of scripts', async ({ page }) => {
  const scripts = watchScripts(page)
  await openClass(page, 'the-whole-journey')
  await page.waitForLoadState('networkidle')
  const { files, bytes } = await scripts()
  console.log(`scripts: ${(bytes / 1000).toFixed(1)} kB in ${files} files`)
  expect(bytes).toBeLessThanOrEqual(70_000)
})

test('the chapter leads to its class view, and that back to the chapter', async ({ page }) => {
  await page.goto('./chapters/feeler-pins/')
  await page.getByRole('link', { name: 'Class view' }).click()
  await expect(page.locator('.class-view[data-live]')).toBeVisible()
  await expect(page.locator('.class-place')).toHaveText(stepPlace('feeler-pins', 1))
  await page.keyboard.press('k')
  await page.getByRole('link', { name: 'The chapter itself' }).click()
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
})

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false })

  freshTest('a class view says that it needs them, and leads to the chapter', async ({ page }) => {
    await page.goto('./class/the-hold/')
    await expect(page.getByText('The class view needs scripts')).toBeVisible()
    await expect(page.locator('button').filter({ visible: true })).toHaveCount(0)
    await page.getByRole('main').getByRole('link').click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Caught, or let go')
  })
})
