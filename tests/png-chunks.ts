/** A chunk of a PNG: its kind, that with its data, and the sum that comes after them (PNG specification, W3C, 5.3). */
interface Chunk {
  readonly kind: string
  readonly body: Buffer
  readonly sum: number
}

/** All chunks of a PNG. */
export const chunksOf = (bytes: Uint8Array): Chunk[] => {
  const png = Buffer.from(bytes)
  const chunks: Chunk[] = []
  for (let place = 8; place < png.length;) {
    const end = place + 8 + png.readUInt32BE(place)
    const body = png.subarray(place + 4, end)
    chunks.push({ kind: body.toString('latin1', 0, 4), body, sum: png.readUInt32BE(end) })
    place = end + 4
  }
  return chunks
}

/** The international texts of a PNG by their keywords. */
export const textsOf = (bytes: Uint8Array): Record<string, string> =>
  Object.fromEntries(
    chunksOf(bytes)
      .filter(({ kind }) => kind === 'iTXt')
      .map(({ body }) => {
        const [keyword = '', , , , , text = ''] = body.toString('utf8', 4).split('\0')
        return [keyword, text]
      }),
  )
