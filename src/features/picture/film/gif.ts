import { applyPalette, GIFEncoder, quantize } from 'gifenc'
import type { Sheet } from '../raster.ts'
import { type Film, paintFilm } from './film.ts'
import { frameCount } from './stretch.ts'
import { mostBytes, type Watch } from './watch.ts'

/** Pictures a second: a GIF's times are whole hundredths. */
const rate = 10

/** Widths in pixels, of which the next is taken where a GIF is too heavy. */
const widths = [640, 480, 360] as const

/** The most colours of the drawing; one number more says that a pixel stays as it was. */
const mostColours = 255
const stays = 255

const pixelsOf = ({ canvas, pen }: Sheet): Uint8ClampedArray =>
  pen.getImageData(0, 0, canvas.width, canvas.height).data

/** The colours of a film, found in its first picture, its last, and the one in the middle. */
const coloursOf = async (film: Film, width: number, signal: AbortSignal): Promise<number[][]> => {
  const count = frameCount(film.stretch, rate)
  const taken = [0, Math.round(count / 2), count - 1]
  const pictures: Uint8ClampedArray[] = []
  await paintFilm(film, width, { rate, signal, isWanted: (n) => taken.includes(n) }, (sheet) => {
    pictures.push(pixelsOf(sheet))
  })
  const all = new Uint8ClampedArray(pictures.reduce((sum, { length }) => sum + length, 0))
  let place = 0
  for (const picture of pictures) {
    all.set(picture, place)
    place += picture.length
  }
  return quantize(all, mostColours)
}

/** A film as a GIF of this width; null where it is too heavy. */
const gifAt = async (film: Film, width: number, { signal, progress }: Watch): Promise<Blob | null> => {
  const colours = await coloursOf(film, width, signal)
  const palette = Array.from({ length: stays + 1 }, (_, n) => colours[n] ?? [0, 0, 0])
  const count = frameCount(film.stretch, rate)
  const gif = GIFEncoder()
  let before: Uint8Array | null = null
  await paintFilm(film, width, { rate, signal }, (sheet, n) => {
    const now = applyPalette(pixelsOf(sheet), colours)
    const index = before ? now.map((colour, pixel) => (colour === before?.[pixel] ? stays : colour)) : now
    gif.writeFrame(index, sheet.canvas.width, sheet.canvas.height, {
      delay: 1000 / rate,
      dispose: 1,
      ...(before ? { transparent: true, transparentIndex: stays } : { palette }),
    })
    before = now
    progress((n + 1) / count)
  })
  gif.finish()
  const bytes = gif.bytesView()
  return bytes.length > mostBytes ? null : new Blob([bytes.slice()], { type: 'image/gif' })
}

/** A film as a GIF, as large as its weight allows. Throws an AbortError where it is given up. */
export const gifOf = async (film: Film, watch: Watch): Promise<Blob> => {
  for (const width of widths) {
    const gif = await gifAt(film, width, watch)
    if (gif) return gif
  }
  throw new Error('the film is too heavy for a GIF')
}
