import jsQR from 'jsqr'
import type { Locator } from './page.ts'

/** What a phone's camera reads from a code on the page. */
export const scanned = async (code: Locator): Promise<string | undefined> => {
  const shot = await code.screenshot()
  const { data, width, height } = await code.page().evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }))
      const canvas = new OffscreenCanvas(image.width, image.height)
      const context = canvas.getContext('2d')
      context?.drawImage(image, 0, 0)
      const pixels = context?.getImageData(0, 0, image.width, image.height)
      return { data: [...(pixels?.data ?? [])], width: image.width, height: image.height }
    },
    [...shot],
  )
  return jsQR(new Uint8ClampedArray(data), width, height)?.data
}
