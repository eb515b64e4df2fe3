import { readFile } from 'node:fs/promises'
import { ALL_FORMATS, BufferSource, Input } from 'mediabunny'
import { parseHTML } from 'linkedom'
import { optimize } from 'svgo'
import { textsOf } from '../png-chunks.ts'
import { expect, lastingTest as test, type Page, test as ownTest } from './page.ts'

/** A saved file: its name, and what is in it. */
interface Saved {
  readonly name: string
  readonly bytes: Buffer
}

const dialog = (page: Page) => page.locator('.save-dialog')

const openSaving = async (page: Page): Promise<void> => {
  await page.locator('.save-figure').first().click()
  await expect(dialog(page).locator('.save-preview')).toHaveJSProperty('complete', true)
  await expect
    .poll(() =>
      dialog(page)
        .locator('img')
        .evaluate((image: HTMLImageElement) => image.naturalWidth),
    )
    .toBeGreaterThan(300)
}

const save = async (page: Page): Promise<Saved> => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('.save-now').click()])
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) }
}

/** The size of a picture, its corner's colour, and how many of its pixels have another. */
const look = (page: Page, { bytes }: Saved, kind: string) =>
  page.evaluate(
    async ([data, type]) => {
      const image = new Image()
      image.src = `data:${type};base64,${data}`
      await image.decode()
      const { naturalWidth: width, naturalHeight: height } = image
      const pen = new OffscreenCanvas(width, height).getContext('2d')
      pen?.drawImage(image, 0, 0)
      const pixels = new Uint32Array(pen?.getImageData(0, 0, width, height).data.buffer ?? new ArrayBuffer(4))
      const paper = pixels[0] ?? 0
      const inked = pixels.reduce((sum, pixel) => sum + Number(pixel !== paper), 0) / pixels.length
      return { width, height, inked, paper: [paper & 255, (paper >> 8) & 255, (paper >> 16) & 255] }
    },
    [bytes.toString('base64'), kind] as const,
  )

const paper = { light: [0xfa, 0xf6, 0xee], dark: [0x15, 0x18, 0x1c] }

test('a figure in its state is saved as a picture that says what it shows', async ({ page }) => {
  await page.goto('./workbench/#pass=3&at=R12&break=strip.3.seized')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await openSaving(page)
  const words = await page.getByLabel('Description').inputValue()
  expect(words).toContain('Strip 3 seized')
  await expect(page.locator('.save-preview')).toHaveAttribute('alt', words)

  const small = await save(page)
  expect(small.name).toBe('whole-chain-pass-3-r12-strip-3-seized.png')
  await expect(page.locator('.save-said')).toContainText(`Saved as ${small.name}`)
  expect(textsOf(small.bytes)).toEqual({ Title: 'Figure 1. The whole chain', Description: words })
  const seen = await look(page, small, 'image/png')
  expect(seen).toMatchObject({ width: 1200, paper: paper.light })
  expect(seen.inked).toBeGreaterThan(0.05)

  // Without words, larger, in the dark: lower for its width, and as rich.
  await page.getByText('2,400, to print').click()
  await page.getByText('Dark', { exact: true }).click()
  await page.getByText('What happens, in words').click()
  await page.getByText('Its address', { exact: true }).click()
  const bare = await look(page, await save(page), 'image/png')
  expect(bare).toMatchObject({ width: 2400, paper: paper.dark })
  expect(bare.height / bare.width).toBeLessThan(seen.height / seen.width)
  expect(bare.inked).toBeGreaterThan(0.05)
})

/** All that a saved drawing may consist of. */
const known = 'circle clippath desc g path pattern rect style svg text title'.split(' ')

test('a saved drawing needs nothing else, in states at the edge too', async ({ page }) => {
  await page.goto('./workbench/')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  const faults = [
    'belt.timing=4',
    'retainer.worn=12',
    'sweep.worn=0.4',
    ...[1, 2, 3, 4, 5, 6, 7, 8].map((n) => `strip.${n}.seized`),
  ]
  const states = [
    `pass=2&at=L12&${faults.map((fault) => `break=${encodeURIComponent(fault)}`).join('&')}`,
    'card=none&at=R50',
    'needles=L10-R8&at=R4&pass=5',
    `own=1_bed-250&needles=L125-R125&at=L125&pass=9999&speed=2000&wear=1&note=${'W'.repeat(280)}`,
    `at=R12&note=${encodeURIComponent('<b> & "so" ]]> \u0007')}`,
  ]
  for (const state of states) {
    await page.evaluate((text) => {
      location.hash = text
    }, state)
    await openSaving(page)
    await page.getByText('Drawing (SVG)').click()
    const { bytes, name } = await save(page)
    expect(name).toMatch(/^whole-chain-pass-\d+-[lr]\d+.*\.svg$/)
    const svg = bytes.toString()
    // A strict parser reads it.
    expect(() => optimize(svg, { plugins: [] })).not.toThrow()
    const read = parseHTML(svg).document
    const tags = new Set([...read.querySelectorAll('*')].map(({ tagName }) => tagName.toLowerCase()))
    expect([...tags].filter((tag) => !known.includes(tag))).toEqual([])
    expect(read.querySelector('desc')?.textContent).toBe(await page.getByLabel('Description').inputValue())
    const families = [...read.querySelectorAll('[font-family]')].map((each) =>
      each.getAttribute('font-family'),
    )
    expect(families.length).toBeGreaterThan(0)
    for (const family of families) expect(family).toMatch(/^["']?Barlow Semi Condensed/)
    expect([...svg.matchAll(/\burl\((?!#|data:)|href=|\bclass=|var\(/g)]).toEqual([])
    expect(svg.match(/src:url\(data:font\/woff2;base64,/g)).toHaveLength(2)
    expect((await look(page, { name, bytes }, 'image/svg+xml')).inked).toBeGreaterThan(0.03)
    await page.keyboard.press('Escape')
    await expect(dialog(page)).toBeHidden()
  }
})

test('the home page, a chapter and the parts save what they show, by keys alone', async ({ page }) => {
  for (const [path, name] of [
    ['./', 'every-eighth-needle.png'],
    ['./chapters/the-hold/', 'machine-pass-1-r2.png'],
    ['./parts/', 'the-card-reader-from-the-front.png'],
  ] as const) {
    await page.goto(path)
    await expect(page.locator('[data-live]').first()).toBeVisible()
    const button = page.locator('.save-figure').first()
    const controls = page.locator('.more-controls:not([open]) > summary')
    if ((await controls.count()) > 0) await controls.press('Enter')
    await button.press('Enter')
    await expect(dialog(page).getByRole('button', { name: 'Close' })).toBeFocused()
    await expect
      .poll(() =>
        dialog(page)
          .locator('img')
          .evaluate((image: HTMLImageElement) => image.naturalWidth),
      )
      .toBeGreaterThan(300)
    await dialog(page).getByRole('button', { name: 'Save' }).focus()
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
    expect(download.suggestedFilename()).toBe(name)
    const bytes = await readFile(await download.path())
    expect(textsOf(bytes)['Description']).not.toBe('')
    expect((await look(page, { name, bytes }, 'image/png')).inked).toBeGreaterThan(0.02)
    await page.keyboard.press('Escape')
    await expect(button).toBeFocused()
  }
})

const openFilm = async (page: Page, path: string): Promise<void> => {
  await page.goto(path)
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await openSaving(page)
  await page.getByText('Film', { exact: true }).click()
}

/** The most bytes that a message takes. */
const mostBytes = 8_000_000

test('a stretch is saved as a film for a message, or given up', async ({ page }) => {
  await openFilm(page, './workbench/#needles=L10-R8&pass=3&at=R4&break=strip.3.seized')
  await page.getByLabel('One pass').check()
  await page.locator('.save-now').click()
  await page.getByRole('button', { name: 'Cancel' }).click()
  await expect(page.locator('.save-said')).toHaveText('The film was given up; nothing is saved.')
  await page.getByLabel('One needle').check()
  await page.getByLabel('Needle', { exact: true }).fill('R300')
  await expect(page.locator('.save-said')).toContainText('Name a needle in use, from L10 to R8.')
  await expect(page.locator('.save-now')).toBeDisabled()
  await page.getByLabel('Needle', { exact: true }).fill('r2')
  await expect(page.locator('.save-now')).toBeEnabled()

  const { name, bytes } = await save(page)
  expect(name).toMatch(/^whole-chain-needle-r2-in-pass-3\.(mp4|webm)$/)
  expect(bytes.length).toBeLessThan(mostBytes)
  const film = new Input({ source: new BufferSource(new Uint8Array(bytes)), formats: ALL_FORMATS })
  expect(await film.computeDuration()).toBeCloseTo(10.52, 1)
  const track = await film.getPrimaryVideoTrack()
  expect(await track?.computePacketStats()).toMatchObject({ packetCount: 263 })
  expect(await track?.getDisplayWidth()).toBe(1280)
  expect((await film.getMetadataTags()).description).toBe(await page.getByLabel('Description').inputValue())
})

ownTest('where the browser writes no video a film is a GIF, the same each time', async ({ page }) => {
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'VideoEncoder'))
  await openFilm(page, './workbench/#needles=L10-R8&pass=2&at=R4')
  await expect(page.locator('.save-said')).toContainText(
    'This browser writes no video here, so the film is a GIF',
  )
  const { name, bytes } = await save(page)
  expect(name).toBe('whole-chain-needle-r4-in-pass-2.gif')
  expect(bytes.length).toBeLessThan(mostBytes)
  const seen = await page.evaluate(async (data) => {
    const gif = Uint8Array.from(atob(data), (character) => character.charCodeAt(0))
    const decoder = new ImageDecoder({ data: gif, type: 'image/gif' })
    await decoder.tracks.ready
    const count = decoder.tracks.selectedTrack?.frameCount ?? 0
    const pictures: Uint32Array[] = []
    let time = 0
    for (let n = 0; n < count; n++) {
      const { image } = await decoder.decode({ frameIndex: n })
      time += image.duration ?? 0
      if (n % 50 === 0) {
        const pen = new OffscreenCanvas(image.displayWidth, image.displayHeight).getContext('2d')
        pen?.drawImage(image, 0, 0)
        const { data: pixels } = pen?.getImageData(0, 0, image.displayWidth, image.displayHeight) ?? {
          data: [],
        }
        pictures.push(new Uint32Array(Uint8ClampedArray.from(pixels).buffer))
      }
      image.close()
    }
    const share = (of: Uint32Array, isCounted: (pixel: number, n: number) => boolean): number =>
      of.reduce((sum, pixel, n) => sum + Number(isCounted(pixel, n)), 0) / of.length
    const [first = new Uint32Array(1), ...others] = pictures
    return {
      count,
      seconds: time / 1_000_000,
      inked: pictures.map((each) => share(each, (pixel) => pixel !== each[0])),
      moved: others.map((each) => share(each, (pixel, n) => pixel !== first[n])),
    }
  }, bytes.toString('base64'))
  expect(seen).toMatchObject({ count: 105, seconds: 10.5 })
  for (const inked of seen.inked) expect(inked).toBeGreaterThan(0.05)
  for (const moved of seen.moved) expect(moved).toBeGreaterThan(0.01)
  expect((await save(page)).bytes.equals(bytes)).toBe(true)
})

test('what saves a figure opens with its picture, so that its buttons stay where they are', async ({
  page,
}) => {
  await page.goto('./workbench/')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await page.evaluate(() => {
    const tops: number[] = []
    Reflect.set(window, 'tops', tops)
    const look = (): void => {
      const button = document.querySelector('.save-dialog[open] .save-now')
      if (button) tops.push(button.getBoundingClientRect().top)
      requestAnimationFrame(look)
    }
    look()
  })
  await openSaving(page)
  await page.waitForFunction(() => (Reflect.get(window, 'tops') as number[]).length > 10)
  const tops = await page.evaluate(() => Reflect.get(window, 'tops') as number[])
  expect(Math.max(...tops) - Math.min(...tops)).toBeLessThan(2)
})
