import { crc32 } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import sharp from 'sharp'
import { withTexts } from '@/features/picture/png-text.ts'
import { chunksOf, textsOf } from '../../png-chunks.ts'

const raw = { width: 2, height: 1, channels: 3 } as const
const png = Uint8Array.from(
  await sharp(Uint8Array.of(1, 2, 3, 4, 5, 6), { raw })
    .png({ palette: true })
    .toBuffer(),
)

describe('the texts of a PNG', () => {
  test('are read back by their keywords, whatever letters are in them', async () => {
    const texts = { Title: 'Figure 6. Hold', Description: 'The catch keeps R12 down. “Selected” − ä 𝄞' }
    const written = await (await withTexts(new Blob([png]), texts)).bytes()
    expect(textsOf(written)).toEqual(texts)
  })

  test('stand after the header, each with its sum, and leave the rest as it was', async () => {
    const written = await (await withTexts(new Blob([png]), { Description: 'Pins' })).bytes()
    const chunks = chunksOf(written)
    expect(chunks.map(({ kind }) => kind).slice(0, 3)).toEqual(['IHDR', 'iTXt', chunksOf(png)[1]?.kind])
    for (const { kind, body, sum } of chunks) expect(sum, kind).toBe(crc32(body))
    const others = chunks.filter(({ kind }) => kind !== 'iTXt')
    expect(others).toEqual(chunksOf(png))
  })
})
