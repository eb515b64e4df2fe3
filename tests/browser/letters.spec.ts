import { drawn, expect, type Page, lastingTest as test } from './page.ts'

/** Pages with every figure of the site, at a step that shows it. */
const pages = [
  'workbench/#at=R23',
  'faults/strip-seized/',
  'chapters/the-whole-journey/',
  'chapters/the-card-and-the-turn/',
  'chapters/feeler-pins/',
  'chapters/the-sweep-and-the-belt/',
  'chapters/rockers-and-strips/?step=one-under-the-presser',
  'chapters/the-hold/',
  'chapters/the-cam-gate/',
  'chapters/a-row-then-a-fabric/?step=two-yarns',
  'chapters/on-the-bench/?step=draw-the-bar',
  'chapters/on-the-bench/?step=pins-by-hand',
  'chapters/on-the-bench/?step=each-strip-by-hand',
  'chapters/on-the-bench/?step=when-to-stop',
]

/** The smallest letters of the figures in sight, in pixels of the screen, and whether any word is cut off at a picture's edge. */
const letters = (page: Page): Promise<{ least: number; cut: string[] }> =>
  page.evaluate(() => {
    const texts = [...document.querySelectorAll<SVGTextElement>('.figure svg text')].filter(
      (text) => text.textContent.trim() !== '' && text.checkVisibility(),
    )
    const sizes = texts.map(
      (text) => parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM()?.a ?? 1),
    )
    const cut = texts.filter((text) => {
      if (text.closest('[clip-path]')) return false
      const { left, right } = text.getBoundingClientRect()
      const picture = text.ownerSVGElement?.getBoundingClientRect()
      return picture !== undefined && (left < picture.left - 2 || right > picture.right + 2)
    })
    return { least: Math.min(...sizes), cut: cut.map(({ textContent }) => textContent) }
  })

const screens = [
  [1440, 900],
  [1280, 720],
  [1366, 768],
  [1440, 700],
  [1024, 768],
  [820, 1180],
  [360, 740],
] as const

for (const address of pages)
  test(`no letter of a figure is smaller than 12 pixels, or cut off, on any screen: ${address}`, async ({
    page,
  }) => {
    await page.goto(`./${address}`)
    await expect(page.locator('.machine[data-live]')).toBeVisible()
    for (const [width, height] of screens) {
      await page.setViewportSize({ width, height })
      await drawn(page)
      const { least, cut } = await letters(page)
      expect(least, `${width} × ${height}`).toBeGreaterThanOrEqual(11.95)
      expect(cut, `${width} × ${height}`).toEqual([])
    }
  })
