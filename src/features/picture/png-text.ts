const ascii = new TextEncoder()

/** CRC-32 of some bytes (PNG specification, W3C, annex D). */
const crc32 = (bytes: Uint8Array): number => {
  let crc = 0xff_ff_ff_ff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xed_b8_83_20 : 0)
  }
  return (crc ^ 0xff_ff_ff_ff) >>> 0
}

/** A chunk with international text: keyword, not compressed, in British English (PNG specification, 11.3.3.4). */
const textChunk = (keyword: string, text: string): Uint8Array<ArrayBuffer> => {
  const data = ascii.encode(`${keyword}\0\0\0en-GB\0\0${text}`)
  const chunk = new Uint8Array(data.length + 12)
  const view = new DataView(chunk.buffer)
  view.setUint32(0, data.length)
  chunk.set(ascii.encode('iTXt'), 4)
  chunk.set(data, 8)
  view.setUint32(8 + data.length, crc32(chunk.subarray(4, 8 + data.length)))
  return chunk
}

/** Length of the signature and the header, after which texts may come (PNG specification, 5.6). */
const headEnd = 33

/** A PNG with texts by their keywords in it; a keyword is one of PNG's own, such as Title and Description. */
export const withTexts = async (png: Blob, texts: Readonly<Record<string, string>>): Promise<Blob> => {
  const bytes = new Uint8Array(await png.arrayBuffer())
  const chunks = Object.entries(texts).map(([keyword, text]) => textChunk(keyword, text))
  return new Blob([bytes.subarray(0, headEnd), ...chunks, bytes.subarray(headEnd)], { type: 'image/png' })
}
