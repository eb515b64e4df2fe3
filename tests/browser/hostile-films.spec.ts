import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from './page.ts'

const openFilm = async (page: Page): Promise<void> => {
  await page.goto('./workbench/#needles=L10-R8&pass=2&at=R4')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await page.locator('.save-figure').first().click()
  await page.locator('.save-dialog').getByText('Film', { exact: true }).click()
}

/** How many pictures the GIF has that is saved now. */
const savedPictures = async (page: Page): Promise<number> => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('.save-now').click()])
  expect(download.suggestedFilename()).toMatch(/\.gif$/)
  const bytes = await readFile(await download.path())
  return page.evaluate(async (data) => {
    const gif = Uint8Array.from(atob(data), (character) => character.charCodeAt(0))
    const decoder = new ImageDecoder({ data: gif, type: 'image/gif' })
    await decoder.tracks.ready
    return decoder.tracks.selectedTrack?.frameCount ?? 0
  }, bytes.toString('base64'))
}

test('where the browser has an encoder and denies it, the film is a GIF, and that is said before', async ({
  page,
}) => {
  await page.addInitScript(() => {
    VideoEncoder.isConfigSupported = () => Promise.reject(new DOMException('denied', 'NotAllowedError'))
  })
  await openFilm(page)
  await expect(page.locator('.save-said')).toContainText(
    'This browser writes no video here, so the film is a GIF',
  )
  await expect(page.locator('.save-now')).toBeEnabled()
})

test('where the encoder fails half way, by itself or as it is called, the whole film is made a GIF', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const ways = ['lost', 'thrown']
    Reflect.set(globalThis, 'waysLeft', ways)
    globalThis.VideoEncoder = new Proxy(VideoEncoder, {
      construct: (Native, [init]: [VideoEncoderInit]) => {
        const way = ways.shift()
        const encoder = new Native(init)
        const encode = encoder.encode.bind(encoder)
        let pictures = 0
        encoder.encode = (picture, options) => {
          pictures += 1
          if (pictures < 40) encode(picture, options)
          else if (way === 'thrown') {
            // The library leaves the picture open where its call throws, and a browser warns of that some time later.
            picture.close()
            throw new DOMException('the device is gone', 'InvalidStateError')
          } else init.error(new DOMException('the device is gone', 'EncodingError'))
        }
        return encoder
      },
    })
  })
  await openFilm(page)
  for (const left of [['thrown'], []]) {
    expect(await savedPictures(page)).toBe(105)
    expect(await page.evaluate(() => Reflect.get(globalThis, 'waysLeft') as string[])).toEqual(left)
  }
  await expect(page.locator('.save-now')).toBeEnabled()
})
