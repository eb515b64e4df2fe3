import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { swatchNeedles } from '@/drawings/cloth/swatch.ts'
import { exampleOf, lookAt, type Look } from '@/find/battery.ts'
import { tellingLooks } from '@/find/contrast.ts'
import { mainCard } from '@/link/state.ts'
import { type FaultKindName, faultKindNames } from '@/mechanism/fault-kinds.ts'
import { startRun } from '@/mechanism/pass.ts'
import { sampleOf, wrongNeedles } from '@/mechanism/sample.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { library } from './model.ts'
import { expect, type Locator, type Page, lastingTest as test } from './page.ts'

/** How much of two pictures differs at least: most pairs differ in a third and more. */
const leastApart = 0.02

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

test('faults and chapters have a preview picture each, and other pages share one', async ({ page }) => {
  const addresses = ['./', './faults/strip-seized/', './faults/pin-low/', './chapters/the-hold/']
  const pictures: Buffer[] = []
  for (const address of addresses) pictures.push(await previewOf(page, address))
  for (const picture of pictures) expect(sizeOf(picture)).toEqual([600, 315])
  expect(new Set(pictures.map((picture) => picture.toString('base64'))).size).toBe(pictures.length)
  expect((await previewOf(page, './glossary/')).equals(pictures[0]!)).toBe(true)
  expect((await previewOf(page, './class/the-hold/')).equals(pictures[3]!)).toBe(true)
})

/** A picture's pixels at this width, four bytes each. */
const pixelsOf = async (page: Page, png: Buffer, width: number): Promise<Buffer> =>
  Buffer.from(
    await page.evaluate(
      async ([text, width]) => {
        const image = new Image()
        image.src = `data:image/png;base64,${text}`
        await image.decode()
        const height = Math.round((image.height * width) / image.width)
        const sheet = new OffscreenCanvas(width, height).getContext('2d')!
        sheet.imageSmoothingQuality = 'high'
        sheet.drawImage(image, 0, 0, width, height)
        const { data } = sheet.getImageData(0, 0, width, height)
        return btoa(Array.from(data, (byte) => String.fromCharCode(byte)).join(''))
      },
      [png.toString('base64'), width] as const,
    ),
    'base64',
  )

/** The share of a picture's pixels that are plainly lighter or darker than another's. */
const apart = (one: Buffer, other: Buffer): number => {
  let count = 0
  for (let n = 0; n < one.length; n += 4) {
    const differs = [0, 1, 2].some((channel) => Math.abs(one[n + channel]! - other[n + channel]!) > 40)
    if (differs) count++
  }
  return count / (one.length / 4)
}

test('at 200 pixels, as a messenger shows them, no two preview pictures look the same', async ({ page }) => {
  await page.goto('./glossary/')
  const folder = fileURLToPath(new URL('../../dist/previews/', import.meta.url))
  const names = readdirSync(folder)
  expect(names.length).toBeGreaterThan(faultKindNames.length + 10)
  const pictures: Buffer[] = []
  for (const name of names) pictures.push(await pixelsOf(page, readFileSync(`${folder}${name}`), 200))
  const pairs = names.flatMap((name, n) =>
    names.slice(n + 1).map((other, m) => ({
      pair: `${name} and ${other}`,
      share: apart(pictures[n]!, pictures[n + 1 + m]!),
    })),
  )
  const nearest = pairs.reduce((least, one) => (one.share < least.share ? one : least))
  console.log(`the nearest: ${nearest.pair}, ${(nearest.share * 100).toFixed(1)} %`)
  expect(nearest.share, nearest.pair).toBeGreaterThan(leastApart)
})

/** Where a picture has vermilion between two heights: the middles of what stands apart by more than a line, from the left. */
const vermilionAt = (page: Page, png: Buffer, from: number, to: number): Promise<number[]> =>
  page.evaluate(
    async ([text, top, bottom]) => {
      const image = new Image()
      image.src = `data:image/png;base64,${text}`
      await image.decode()
      const { width } = image
      const sheet = new OffscreenCanvas(width, image.height).getContext('2d')!
      sheet.drawImage(image, 0, 0)
      const { data } = sheet.getImageData(0, top, width, bottom - top)
      const isRed = (x: number, y: number): boolean => {
        const first = 4 * (y * width + x)
        return data[first]! > 160 && data[first + 1]! < 110 && data[first + 2]! < 90
      }
      const columns = Array.from({ length: width }, (_, x) => x).filter((x) =>
        Array.from({ length: bottom - top }, (_, y) => y).some((y) => isRed(x, y)),
      )
      const groups: number[][] = []
      for (const x of columns) {
        const last = groups.at(-1)
        if (last && x - last.at(-1)! < 16) last.push(x)
        else groups.push([x])
      }
      return groups.map((group) => (group[0]! + group.at(-1)!) / 2)
    },
    [png.toString('base64'), from, to] as const,
  )

test('the cloth of a preview picture has its wrong stitches where the model has them', async ({ page }) => {
  const png = await previewOf(page, './faults/strip-seized/')
  const columns = await vermilionAt(page, png, 200, 314)
  const sample = sampleOf(startRun({ ...soundScenario(pattern), faults: [exampleOf('strip.seized')] }), 1)
  const { first, last } = swatchNeedles(sample, 'wide')
  const wrong = wrongNeedles(sample).filter((needle) => needle >= first && needle <= last)
  expect(wrong.length).toBeGreaterThan(4)
  const left = 600 / 2 - (48 * 11) / 2
  expect(columns).toHaveLength(wrong.length)
  for (const [n, needle] of wrong.entries())
    expect(Math.abs(columns[n]! - (left + (needle - first + 0.5) * 11))).toBeLessThan(3)
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
