import { element } from '../../browser/dom.ts'
import type { Composed } from './composed.ts'

/** A canvas to draw pictures on, and its pen. */
export interface Sheet {
  readonly canvas: HTMLCanvasElement
  readonly pen: CanvasRenderingContext2D
}

/** An empty canvas. Throws where this browser draws on none of this size. */
export const emptySheet = (width: number, height: number): Sheet => {
  const canvas = element('canvas', { width: String(width), height: String(height) })
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) throw new Error('this browser draws on no canvas')
  return { canvas, pen }
}

/** Draws a picture over the whole of a canvas. */
export const paint = async ({ canvas, pen }: Sheet, { svg }: Composed): Promise<void> => {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    pen.drawImage(image, 0, 0, canvas.width, canvas.height)
  } finally {
    URL.revokeObjectURL(address)
  }
}

/** A picture as a PNG of this width, its height after it. Throws where the browser makes none. */
export const pngOf = async (picture: Composed, width: number): Promise<Blob> => {
  const sheet = emptySheet(width, Math.round((width * picture.height) / picture.width))
  await paint(sheet, picture)
  const png = await new Promise<Blob | null>((done) => {
    sheet.canvas.toBlob(done, 'image/png')
  })
  if (!png) throw new Error('this browser makes no picture of a canvas')
  return png
}
