import jsQR from 'jsqr'
import { expect, test } from 'vitest'
import { codeText } from '@/setup/code-text.mjs'

const upper = '█▀'
const lower = '█▄'

/** What a phone reads from a code of text, black where there is ink, each module four pixels wide. */
const readBack = (text: string): string | undefined => {
  const rows = text
    .trimEnd()
    .split('\n')
    .flatMap((line) => [upper, lower].map((inks) => Array.from(line, (sign) => inks.includes(sign))))
  const wide = 4
  const side = Math.max(rows.length, rows[0]?.length ?? 0) * wide
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      if (rows[Math.floor(y / wide)]?.[Math.floor(x / wide)])
        pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3)
  return jsQR(pixels, side, side)?.data
}

test('a code in letters is read back as the address that it was made of, with its colours and without', async () => {
  const address = 'http://192.168.100.200:4321/machines/'
  const plain = await codeText(address, false)
  expect(readBack(plain)).toBe(address)
  const coloured = await codeText(address, true)
  expect(coloured.replaceAll(/\u001B\[[\d;]*m/g, '')).toBe(plain)
  expect(coloured).toMatch(/^\u001B\[30;107m/)
})
