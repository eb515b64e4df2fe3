import { readdirSync, readFileSync } from 'node:fs'
import { test as plain } from '@playwright/test'
import { sceneViews } from '@/drawings/scene/views.ts'
import { outlineOf } from '@/site/chapter-outline.ts'
import { readSceneStep } from '@/words/figures/scene-step.ts'
import { flagWords } from '@/words/subject.ts'
import { inkShare, wrongLabels } from './scene-picture.ts'
import { expect, type Locator, type Page, shiftOf, test, watchScripts, watchShifts } from './page.ts'

const folder = 'content/chapters/'

/** Every chapter with its steps that show the machine in three dimensions. */
const chapters = readdirSync(folder)
  .sort()
  .map((file) => ({
    slug: file.replace(/^\d+-|\.mdx$/g, ''),
    steps: outlineOf(readFileSync(`${folder}${file}`, 'utf8')).steps.filter(
      ({ figure }) => figure === 'scene',
    ),
  }))
  .filter(({ steps }) => steps.length > 0)

const live = async (page: Page, address: string): Promise<void> => {
  await page.goto('about:blank')
  await page.goto(address)
  await expect(page.locator('.machine[data-live]')).toBeVisible()
}

const drawing = (page: Page): Locator => page.locator('.drawing[data-figure="scene"]')
const picture = (page: Page): Locator => drawing(page).locator('svg').filter({ visible: true })

const screens = [
  [1440, 900],
  [1280, 720],
  [1024, 768],
  [360, 740],
] as const

for (const { slug, steps } of chapters)
  test(`every step of ${slug} has its flag in the picture and in the sentence, and whole labels, on four screens`, async ({
    page,
  }) => {
    test.setTimeout(180_000)
    for (const { id, scene } of steps) {
      await live(page, `./chapters/${slug}/?step=${id}`)
      const subject = flagWords(readSceneStep(scene).subject!)
      const flag = picture(page).locator('.scene-flag[data-subject="subject"]')
      for (const [width, height] of screens) {
        await page.setViewportSize({ width, height })
        const says = `${id}, ${width} pixels wide`
        await expect(flag, says).toHaveText(subject)
        await expect(picture(page).locator('.scene-machine path, image').first(), says).toBeAttached()
        await expect(page.locator('.happening'), says).toContainText(new RegExp(subject, 'i'))
        await expect.poll(() => wrongLabels(picture(page)), says).toEqual([])
        const [own, all] = [await flag.boundingBox(), await picture(page).boundingBox()]
        expect(own!.x, says).toBeGreaterThanOrEqual(all!.x)
        expect(own!.x + own!.width, says).toBeLessThanOrEqual(all!.x + all!.width)
        expect(own!.y, says).toBeGreaterThanOrEqual(all!.y)
        // The other two show the widest one's drawing smaller.
        if (width === 1440 || width === 360)
          await expect.poll(() => inkShare(picture(page)), says).toBeGreaterThan(0.02)
      }
    }
  })

/** What lies at the middle of the subject's flag, the uppermost first: the flag itself, and the canvas. */
const seenAtFlag = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLElement>('.scene-canvas')!
    const cloth = [...document.querySelectorAll('.scene-flag[data-subject="subject"] .scene-cloth')].find(
      (each) => each.checkVisibility(),
    )!
    const { x, y, width, height } = cloth.getBoundingClientRect()
    canvas.style.pointerEvents = 'auto'
    const found = document.elementsFromPoint(x + width / 2, y + height / 2)
    canvas.style.pointerEvents = ''
    return [
      ...new Set(
        found.flatMap((each) => (each === canvas ? ['canvas'] : each.closest('.scene-flag') ? ['flag'] : [])),
      ),
    ]
  })

test.describe('while it moves', () => {
  test.use({ motion: 'no-preference' })

  test('the camera travels from step to step, and its picture is never empty', async ({ page }) => {
    const { slug, steps } = chapters[0]!
    await live(page, `./chapters/${slug}/`)
    await drawing(page).evaluate((element) => {
      new MutationObserver(() => {
        if (element.hasAttribute('data-turning')) performance.mark('turning')
      }).observe(element, { attributes: true })
    })
    for (const { id } of steps.slice(1, 5)) {
      await page.locator('.step-forward').click()
      await expect(page.locator(`.step[id="${id}"][data-current]`)).toBeAttached()
      for (let n = 0; n < 6; n++) expect(await inkShare(picture(page)), id).toBeGreaterThan(0.02)
      await expect(drawing(page)).not.toHaveAttribute('data-turning')
      expect(await page.evaluate(() => performance.getEntriesByName('turning').length), id).toBeGreaterThan(0)
      await page.evaluate(() => {
        performance.clearMarks()
      })
    }
  })

  test('a drag turns it on a canvas, and a double press brings it back', async ({ page }) => {
    const { slug, steps } = chapters[0]!
    await live(page, `./chapters/${slug}/?step=${steps[2]!.id}`)
    await expect(picture(page).locator('.scene-machine path').first()).toBeAttached()
    const slab = picture(page).locator('.stand-you')
    const home = await slab.getAttribute('transform')
    const box = (await picture(page).boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.mouse.down()
    await page.mouse.move(box.x + box.width / 2 + 120, box.y + box.height / 2 + 10, { steps: 5 })
    await expect(drawing(page)).toHaveAttribute('data-turning')
    expect(await seenAtFlag(page)).toEqual(['flag', 'canvas'])
    await page.mouse.up()
    await expect(drawing(page)).not.toHaveAttribute('data-turning')
    expect(await slab.getAttribute('transform')).not.toBe(home)
    await page.mouse.dblclick(box.x + box.width / 2, box.y + box.height / 2)
    await expect(slab).toHaveAttribute('transform', home ?? '')
  })
})

test('arrow keys turn it by fifteen degrees while it has the focus, and Home brings it back', async ({
  page,
}) => {
  const { slug } = chapters[0]!
  await live(page, `./chapters/${slug}/`)
  const angle = async (): Promise<number> =>
    Number(/-?[\d.]+/.exec((await picture(page).locator('.stand-you').getAttribute('transform')) ?? '')?.[0])
  const home = await angle()
  await drawing(page).focus()
  await page.keyboard.press('ArrowLeft')
  await expect.poll(angle).toBe(home - 15)
  // The place is in the link, and comes from it.
  await expect(page).toHaveURL(/&view=45\.28\.100$/)
  const entries = await page.evaluate(() => history.length)
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await expect.poll(angle).toBe(home + 15)
  await page.keyboard.press('Home')
  await expect.poll(angle).toBe(home)
  await expect(page).not.toHaveURL(/view=/)
  expect(await page.evaluate(() => history.length)).toBe(entries)
  await page.evaluate(() => {
    location.hash += '&view=60.10.100'
  })
  await expect.poll(angle).toBe(home - 30)
  await page.evaluate(() => {
    location.hash = location.hash.replace('60.10.100', 'upstairs')
  })
  await expect(page.locator('.notice')).toContainText('The link’s view is none of')
})

test('a word lights its part, and a part that is pressed lights its word and opens what it means beside it', async ({
  page,
}) => {
  const { slug, steps } = chapters[0]!
  await live(page, `./chapters/${slug}/?step=${steps[2]!.id}`)
  const word = page.locator('.step[data-current] button.term[data-part="pin"]')
  const words = page.locator(`[id="${(await word.getAttribute('popovertarget')) ?? ''}"]`)
  await word.hover()
  await expect(picture(page).locator('.scene-label[data-name="pin"]')).toHaveAttribute('data-lit', 'lit')
  await expect(picture(page).locator('.scene-machine .lit').first()).toBeAttached()
  await page.mouse.move(5, 5)
  await expect(picture(page).locator('.scene-machine .lit')).toHaveCount(0)
  await picture(page).locator('.scene-label[data-name="pin"]').click()
  await expect(words).toBeVisible()
  await expect(word).toHaveAttribute('data-lit')
  const [own, beside] = [(await word.boundingBox())!, (await words.boundingBox())!]
  expect(Math.abs(beside.x - own.x)).toBeLessThan(20)
  expect(
    Math.min(Math.abs(beside.y - own.y - own.height), Math.abs(own.y - beside.y - beside.height)),
  ).toBeLessThan(20)
  await page.keyboard.press('Escape')
  await expect(words).toBeHidden()
})

test('a chapter’s link says from where its machine is seen', async ({ page }) => {
  const { slug, steps } = chapters[0]!
  const slab = picture(page).locator('.stand-you')
  await live(page, `./chapters/${slug}/?step=${steps[2]!.id}#view=behind`)
  await expect(slab).toHaveAttribute('transform', `rotate(${-sceneViews.behind.view.turned})`)
  await live(page, `./chapters/${slug}/?step=${steps[2]!.id}#at=R20&view=-20.40.100`)
  await expect(slab).toHaveAttribute('transform', 'rotate(20)')
  // It is no part of the state, and the address says it again as soon as the machine is seen from there.
  await expect(page).toHaveURL(/#at=R20&view=-20\.40\.100$/)
  await live(page, `./chapters/${slug}/?step=${steps[2]!.id}#view=upstairs`)
  await expect(page.locator('.notice')).toContainText('The link’s view is none of front')
})

test('the slider moves its carriage, and the picture comes to rest with it', async ({ page }) => {
  const { slug } = chapters[0]!
  await live(page, `./chapters/${slug}/`)
  await page.locator('.carriage-slider').focus()
  await page.keyboard.press('ArrowRight')
  await expect(picture(page).locator('.scene-machine path').first()).toBeAttached()
  const paths = async (): Promise<string> =>
    (await picture(page).locator('.scene-machine').innerHTML()).slice(0, 1e6)
  const before = await paths()
  for (let n = 0; n < 8; n++) await page.keyboard.press('ArrowRight')
  await expect.poll(paths).not.toBe(before)
  await expect(drawing(page)).not.toHaveAttribute('data-turning')
})

test('a chapter opens with the built picture, without what draws it, and nothing jumps', async ({ page }) => {
  const scripts = watchScripts(page)
  await watchShifts(page)
  await live(page, `./chapters/${chapters[0]!.slug}/`)
  await expect(picture(page).locator('image')).toBeAttached()
  const { bytes } = await scripts()
  console.log(`a chapter's scripts at first: ${(bytes / 1000).toFixed(1)} kB`)
  expect(bytes).toBeLessThan(70_000)
  expect(await shiftOf(page)).toBeLessThan(0.02)
})

plain.describe('without scripts', () => {
  plain.use({ javaScriptEnabled: false })

  plain('each step has its still', async ({ page }) => {
    for (const { slug, steps } of chapters) {
      await page.goto(`./chapters/${slug}/`)
      for (const { id } of steps) {
        const still = page.locator(`.step[id="${id}"] .still svg`)
        await expect(still.locator('image')).toHaveAttribute('href', /\/scene\/step-/)
        await expect(still.locator('.scene-flag')).not.toHaveCount(0)
        await still.scrollIntoViewIfNeeded()
        expect(await inkShare(still)).toBeGreaterThan(0.02)
      }
    }
  })
})
