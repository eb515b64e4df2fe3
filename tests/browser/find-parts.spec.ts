import { test as plain } from '@playwright/test'
import { partsViewNames, sceneWords } from '@/words/figures/scene.ts'
import { numberedNames, numberedParts } from '@/words/numbered-parts.ts'
import { inkShare, wrongLabels } from './scene-picture.ts'
import { drawn, expect, gzipped, type Page, shiftOf, test, watchScripts, watchShifts } from './page.ts'

const live = async (page: Page, address = './parts/'): Promise<void> => {
  await page.goto('about:blank')
  await page.goto(address)
  await expect(page.locator('.parts-bench[data-live]')).toBeVisible()
}

const shownPicture = (page: Page) => page.locator('.parts-stage .scene-picture').filter({ visible: true })

const screens = [
  [1440, 900],
  [1280, 720],
  [1024, 768],
  [360, 740],
] as const

/** Looks at the picture on screens of every size. */
const onEach = async (page: Page, look: (says: string) => Promise<unknown>): Promise<void> => {
  for (const [width, height] of screens) {
    await page.setViewportSize({ width, height })
    await drawn(page)
    await look(`${width} pixels wide`)
  }
}

test('every view has its labels on any screen, none of them small, cut or over another', async ({ page }) => {
  await live(page)
  await onEach(page, async (says) => {
    expect(await wrongLabels(shownPicture(page)), `as it was built, ${says}`).toEqual([])
  })
  for (const name of partsViewNames) {
    await page.locator(`.parts-views [data-view="${name}"]`).click()
    await expect(page.locator('.parts-title')).toHaveText(sceneWords[name].title)
    await onEach(page, async (says) => {
      await expect(shownPicture(page).locator('.scene-machine path').first()).toBeAttached()
      expect(await wrongLabels(shownPicture(page)), `${name}, ${says}`).toEqual([])
      expect(await inkShare(page.locator('.parts-stage')), `${name}, ${says}`).toBeGreaterThan(0.02)
    })
  }
})

for (const [width, height] of [
  [1440, 900],
  [1280, 720],
] as const)
  test(`the drawing and all that turns it are in the first screen, ${width} by ${height}`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height })
    await live(page)
    await expect(page.locator('.parts-stage')).toBeInViewport({ ratio: 1 })
    for (const button of await page.locator('.parts-turn button').all())
      await expect(button).toBeInViewport({ ratio: 1 })
  })

test('keys turn it, Home brings it back, and the address says from where it is seen', async ({ page }) => {
  await live(page)
  const stage = page.locator('.parts-stage')
  await stage.focus()
  await page.keyboard.press('ArrowLeft')
  await expect(page).toHaveURL(/of=front.*#view=45\.28\.100$/)
  await expect(shownPicture(page)).toHaveAttribute('aria-label', /turned to the right/)
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  await expect(page).toHaveURL(/#view=45\.-2\.100$/)
  await page.keyboard.press('Home')
  await expect(page).toHaveURL(/\/parts\/#view=front$/)
})

test.describe('by hand', () => {
  test.use({ motion: 'no-preference' })

  test('a drag turns it on a canvas, and lets it rest as a picture', async ({ page }) => {
    await live(page)
    const box = await page.locator('.parts-stage').boundingBox()
    const [x, y] = [(box?.x ?? 0) + 400, (box?.y ?? 0) + 300]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x - 60, y + 20, { steps: 4 })
    await expect(page.locator('.parts-bench[data-turning] .parts-canvas')).toBeVisible()
    const leaders = shownPicture(page).locator('.scene-leader')
    const before = await leaders.getAttribute('d')
    await page.mouse.move(x - 90, y + 20, { steps: 4 })
    await expect(leaders, 'the labels’ lines follow').not.toHaveAttribute('d', before ?? '')
    await page.mouse.move(x - 60, y + 20, { steps: 4 })
    expect(await inkShare(page.locator('.parts-stage'))).toBeGreaterThan(0.02)
    await page.mouse.up()
    await expect(page.locator('.parts-canvas')).toBeHidden()
    await expect(page).toHaveURL(/#view=57\.37\.100$/)
    await page.locator('.parts-stage').dblclick({ position: { x: 5, y: 5 } })
    await expect(page).toHaveURL(/#view=front$/)
  })

  test('on its way from view to view it is never an empty picture', async ({ page }) => {
    await live(page)
    await page.locator('.parts-views [data-view="behind"]').click()
    await expect(page.locator('.parts-bench[data-turning]')).toBeAttached()
    for (let n = 0; n < 4; n++) expect(await inkShare(page.locator('.parts-stage'))).toBeGreaterThan(0.02)
    await expect(page.locator('.parts-title')).toHaveText(sceneWords.behind.title)
  })
})

test('pressing a number, or the part itself, opens what it does, and lights it', async ({ page }) => {
  await live(page)
  await shownPicture(page).locator('.scene-label[data-name="rocker"]').click()
  const rocker = page.locator('.parts-list > li[data-name="rocker"]')
  await expect(rocker.locator('details')).toHaveAttribute('open')
  await expect(rocker).toContainText('Top to the left, strip to the right')
  await expect(rocker.getByRole('link', { name: 'Rocker broken: no push' })).toBeVisible()
  await expect(shownPicture(page).locator('.scene-machine .lit').first()).toBeAttached()
  await page.locator('.parts-list > li[data-name="catch"] summary').click()
  await expect(page.locator('.parts-title')).toHaveText(sceneWords.bed.title)
  await expect(shownPicture(page).locator('.scene-label[data-lit="lit"]')).toHaveAttribute(
    'data-name',
    'catch',
  )
})

test('a link shows its own machine from its own side, and says what it could not read', async ({ page }) => {
  await live(page, './parts/?of=bed#pass=17&at=R10.8&break=strip.3.seized&view=-40.35.120')
  await expect(page.locator('.parts-title')).toHaveText(sceneWords.bed.title)
  await expect(shownPicture(page).locator('.scene-machine .broken').first()).toBeAttached()
  await live(page, './parts/#view=upstairs&break=strip.99.seized')
  await expect(page.locator('.link-note')).toContainText('The link’s view is none of front, behind')
  await expect(page.locator('.link-note')).toContainText('strip 99')
})

test('a fault’s page leads to its part, drawn with that fault', async ({ page }) => {
  await page.goto('./faults/strip-seized/')
  await page.getByRole('link', { name: 'See where it is' }).click()
  await expect(page.locator('.parts-title')).toHaveText(sceneWords.bed.title)
  await expect(page.locator('.link-note')).toHaveText('Broken here: Strip 4 seized.')
  await expect(shownPicture(page).locator('.scene-machine .l-wrong').first()).toBeAttached()
})

test('what turns it is fetched when somebody turns it; before, its scripts are few, and nothing jumps', async ({
  page,
}) => {
  const scripts = watchScripts(page)
  await watchShifts(page)
  await live(page)
  await page.waitForLoadState('networkidle')
  const { bytes, files } = await scripts()
  console.log(`parts: ${(bytes / 1000).toFixed(1)} kB in ${files} files`)
  expect(bytes).toBeLessThan(36_000)
  expect(await shiftOf(page)).toBeLessThan(0.02)
  await page.locator('.parts-views [data-view="bed"]').click()
  await expect(page.locator('.parts-title')).toHaveText(sceneWords.bed.title)
  const all = (await scripts()).bytes + gzipped(await page.locator('.scene-trees').innerText())
  console.log(`parts, turned: ${(all / 1000).toFixed(1)} kB`)
  expect(all).toBeLessThan(76_000)
})

plain.describe('without scripts', () => {
  plain.use({ javaScriptEnabled: false })

  plain(
    'every view is there as a picture with its numbers, and every part with its words',
    async ({ page }) => {
      await page.goto('./parts/')
      for (const name of partsViewNames)
        await expect(
          page.locator(`.scene-picture[data-layout="wide"] image[href$="/${name}.svg"]`),
        ).toBeVisible()
      for (const name of numberedNames) {
        const item = page.locator(`.parts-list > li[data-name="${name}"]`)
        await expect(item.locator('summary')).toHaveText(
          `${numberedParts[name].number} ${numberedParts[name].name}`,
        )
      }
      await page.locator('.parts-list summary').first().click()
      await expect(page.locator('.parts-list details[open] p').first()).toBeVisible()
      await expect(page.locator('.parts-bench button').filter({ visible: true })).toHaveCount(0)
    },
  )
})
