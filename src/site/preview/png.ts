import { crc32, deflateSync } from 'node:zlib'

/** A picture's pixels from the top left, four bytes each: red, green, blue and how much they cover. */
export interface Pixels {
  readonly width: number
  readonly height: number
  readonly bytes: Uint8Array
}

/** The most colours that a palette holds. */
const most = 256

/** A picture as numbers of the palette's colours, each 0xRRGGBB. */
interface Indexed {
  readonly palette: readonly number[]
  readonly pixels: Uint8Array
}

/** The picture with the lowest `dropped` bits of each channel left out; null where its colours are still too many. */
const indexedAt = ({ width, height, bytes }: Pixels, dropped: number): Indexed | null => {
  const mask = (0xff << dropped) & 0xff
  const numbers = new Map<number, number>()
  const pixels = new Uint8Array(width * height)
  for (let n = 0; n < pixels.length; n++) {
    const [red, green, blue] = [bytes[4 * n]!, bytes[4 * n + 1]!, bytes[4 * n + 2]!]
    const colour = ((red & mask) << 16) | ((green & mask) << 8) | (blue & mask)
    let number = numbers.get(colour)
    if (number === undefined) {
      number = numbers.size
      if (number === most) return null
      numbers.set(colour, number)
    }
    pixels[n] = number
  }
  return { palette: [...numbers.keys()], pixels }
}

/** The picture in at most 256 colours: exactly where it has no more, else coarsened just as far as it takes. */
const indexed = (picture: Pixels): Indexed => {
  let fit: Indexed | null = null
  for (let dropped = 0; !fit; dropped++) fit = indexedAt(picture, dropped)
  return fit
}

const number32 = (value: number): Buffer => {
  const bytes = Buffer.alloc(4)
  bytes.writeUInt32BE(value)
  return bytes
}

const chunk = (name: string, data: Uint8Array): Buffer => {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  return Buffer.concat([number32(data.length), body, number32(crc32(body))])
}

/**
 * A picture without transparency as a PNG with a palette, a third of the size of one with full colours (PNG
 * specification, W3C: header with depth 8 and colour type 3, palette, rows each with filter 0).
 */
export const encodePng = (picture: Pixels): Uint8Array<ArrayBuffer> => {
  const { width, height } = picture
  const { palette, pixels } = indexed(picture)
  const rows = new Uint8Array((width + 1) * height)
  for (let y = 0; y < height; y++) rows.set(pixels.subarray(y * width, (y + 1) * width), y * (width + 1) + 1)
  const colours = palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 0xff, colour & 0xff])
  return Uint8Array.from(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', Buffer.concat([number32(width), number32(height), Buffer.from([8, 3, 0, 0, 0])])),
      chunk('PLTE', Uint8Array.from(colours)),
      chunk('IDAT', deflateSync(rows, { level: 9 })),
      chunk('IEND', new Uint8Array()),
    ]),
  )
}
