import { exampleOf, lookAt, type Look } from '../../src/find/battery.ts'
import { tellingLooks } from '../../src/find/contrast.ts'
import { mainCard } from '../../src/link/state.ts'
import type { FaultKindName } from '../../src/mechanism/fault-kinds.ts'
import { library } from './model.ts'
import { expect, type Locator, type Page, test } from './page.ts'

const pattern = library.cards.get(mainCard) ?? [0]

/** The picture that a page names for places where its address is shared, as they would fetch it. */
const previewOf = async (page: Page, address: string): Promise<Buffer> => {
  await page.goto(address)
  const named = await page.locator('meta[property="og:image"]').getAttribute('content')
  const { pathname } = new URL(named ?? '', page.url())
  const answer = await page.request.get(pathname)
  expect(answer.status(), pathname).toBe(200)
  expect(answer.headers()['content-type']).toBe('image/png')
  return answer.body()
}

/** Width and height from a PNG's header. */
const sizeOf = (png: Buffer): [number, number] => {
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG')
  return [png.readUInt32BE(16), png.readUInt32BE(20)]
}

test('every page has a preview picture, and each fault its own', async ({ page }) => {
  const pictures: Buffer[] = []
  for (const address of ['./', './faults/strip-seized/', './faults/pin-low/', './faults/needle-gone/'])
    pictures.push(await previewOf(page, address))
  for (const picture of pictures) expect(sizeOf(picture)).toEqual([1200, 630])
  expect(new Set(pictures.map((picture) => picture.toString('base64'))).size).toBe(pictures.length)
  expect((await previewOf(page, './glossary/')).equals(pictures[0]!)).toBe(true)
})

/** How many needles of the shown picture carry a sign: a ring or a diamond is drawn in one stroke, a cross in two. */
const signs = async (bed: Locator, mark: string): Promise<number> => {
  const strokes = await bed
    .locator(`svg:visible .seen-lines .seen-signs[data-mark="${mark}"]`)
    .evaluate((path) => (path.getAttribute('d')?.match(/M/gi) ?? []).length)
  return mark === 'unmoved' ? strokes / 2 : strokes
}

const expectBed = async (bed: Locator, kind: FaultKindName, look: Look): Promise<void> => {
  const { departures } = lookAt([exampleOf(kind)], look, pattern)
  const came = (outcome: string): number => departures.filter((one) => one.came === outcome).length
  await expect(bed.locator('svg:visible')).toHaveCount(1)
  expect(await signs(bed, 'missed')).toBe(came('plain'))
  expect(await signs(bed, 'extra')).toBe(came('selected'))
  expect(await signs(bed, 'unmoved')).toBe(came('unmoved'))
}

for (const width of [1280, 800, 360])
  test(`a fault's beds mark as many needles as the model says, ${width} pixels wide`, async ({ page }) => {
    await page.setViewportSize({ width, height: 740 })
    for (const kind of ['strip.seized', 'card.reversed', 'needle.gone'] as const) {
      await page.goto(`./faults/${kind.replaceAll('.', '-')}/`)
      const looks = tellingLooks(kind, pattern)
      await expect(page.locator('.bed-seen')).toHaveCount(looks.length)
      for (const [n, look] of looks.entries()) await expectBed(page.locator('.bed-seen').nth(n), kind, look)
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    }
  })

for (const width of [1280, 800, 360])
  test(`the beds' names stay large enough and apart, ${width} pixels wide`, async ({ page }) => {
    await page.setViewportSize({ width, height: 740 })
    await page.goto('./faults/strip-seized/')
    const boxes = await page
      .locator('.bed-seen svg:visible')
      .first()
      .evaluate((svg) => {
        const scale = svg.getBoundingClientRect().width / Number(svg.getAttribute('viewBox')?.split(' ')[2])
        return [...svg.querySelectorAll('text')].map((text) => {
          const { left, right, top, bottom } = text.getBoundingClientRect()
          return { left, right, top, bottom, size: parseFloat(getComputedStyle(text).fontSize) * scale }
        })
      })
    for (const [n, one] of boxes.entries()) {
      expect(one.size).toBeGreaterThanOrEqual(11.9)
      expect(one.left).toBeGreaterThanOrEqual(0)
      expect(one.right).toBeLessThanOrEqual(width)
      for (const other of boxes.slice(n + 1)) {
        const isApart = one.right <= other.left || other.right <= one.left
        expect(isApart || one.bottom <= other.top || other.bottom <= one.top).toBe(true)
      }
    }
  })
