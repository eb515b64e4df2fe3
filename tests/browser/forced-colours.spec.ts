import { drawn, expect, type Locator, open, picture, test } from './page.ts'

/** What an element, or a part that styles put before or after it, is drawn with. */
const drawnWith = (
  element: Locator,
  pseudo?: string,
): Promise<{ stroke: string; dash: string; ground: string; words: string; edge: string; outline: string }> =>
  element.first().evaluate((node, part) => {
    const style = getComputedStyle(node, part)
    return {
      stroke: style.stroke,
      dash: style.strokeDasharray,
      ground: style.backgroundColor,
      words: style.color,
      edge: style.borderTopColor,
      outline: `${style.outlineStyle} ${style.outlineWidth} ${style.outlineColor}`,
    }
  }, pseudo)

for (const colorScheme of ['light', 'dark'] as const)
  test.describe(`where the system sets the colours, ${colorScheme}`, () => {
    test.use({ colorScheme, contextOptions: { forcedColors: 'active' } })

    test('selected, missed and plain needles stand out from the ground and from each other', async ({
      page,
    }) => {
      await open(page, 'pass=9&at=R20&break=strip.3.seized')
      const { ground } = await drawnWith(page.locator('body'))
      const stem = (mark: string): Locator => picture(page).locator(`.needle[data-mark="${mark}"]`)
      const [selected, missed, plain] = [
        await drawnWith(stem('selected')),
        await drawnWith(stem('missed')),
        await drawnWith(stem('plain')),
      ]
      const strokes = [selected, missed, plain].map(({ stroke }) => stroke)
      expect(new Set([ground, ...strokes]).size).toBe(4)
      const ghost = await drawnWith(picture(page).locator('.ghosts'))
      expect(ghost.dash).not.toBe('none')
      expect(ghost.stroke).not.toBe(ground)
      await expect(picture(page).locator('.verdict').first()).toHaveText('missed')
      const chip = await drawnWith(page.locator('.chip'))
      expect(chip.edge).not.toBe(ground)
    })

    test('wrong needles in the notes keep their signs, and what is chosen its look', async ({ page }) => {
      await page.goto('./find/#pass=1.right.500.wR3-R19x8')
      await expect(page.locator('.answer').first()).toBeVisible()
      const { ground } = await drawnWith(page.locator('body'))
      const needle = (look: string): Locator => page.locator(`.bed-line [data-look="${look}"]`)
      const ring = await drawnWith(needle('w plain'), '::after')
      const selected = await drawnWith(needle('r selected'), '::before')
      const plain = await drawnWith(needle('r plain'), '::before')
      expect(new Set([ground, ring.edge, selected.ground, plain.ground]).size).toBe(4)
      const way = (checked: string): Locator => page.locator(`[name="way"]${checked} + span`)
      expect((await drawnWith(way(':checked'))).edge).not.toBe((await drawnWith(way(':not(:checked)'))).edge)
      const [here, there] = [
        page.locator('.top .ways [aria-current]'),
        page.locator('.top .ways a:not([aria-current])'),
      ]
      const underline = (link: Locator): Promise<string> =>
        link.first().evaluate((node) => getComputedStyle(node).borderBottomColor)
      expect(await underline(here)).not.toBe(await underline(there))
    })

    test('buttons say whether they can be pressed, are pressed, or have the keyboard', async ({ page }) => {
      await page.goto('./workbench/?beside=fabric')
      await expect(page.locator('.workbench[data-live]')).toBeVisible()
      await drawn(page)
      const { ground } = await drawnWith(page.locator('body'))
      const [off, on, pressed] = [
        await drawnWith(page.locator('.undo')),
        await drawnWith(page.locator('.bench-buttons .keys')),
        await drawnWith(page.locator('[data-tool="fabric"]')),
      ]
      expect(off.words).not.toBe(on.words)
      expect(on.edge).not.toBe(ground)
      expect(pressed.ground).not.toBe(ground)
      expect(pressed.words).not.toBe(pressed.ground)
      await page.keyboard.press('Tab')
      const { outline } = await drawnWith(page.locator(':focus'))
      expect(outline).toMatch(/^solid 3px/)
      expect(outline).not.toContain(ground)
    })
  })
