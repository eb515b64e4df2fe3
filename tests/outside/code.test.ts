import { correction, generate } from 'lean-qr/nano'
import { expect, test } from 'vitest'

/** Source: the capacity table of ISO/IEC 18004, bytes at level M. A code of version v has 17 + 4v modules a side. */
const capacities = [
  [3, 42],
  [5, 84],
  [6, 106],
  [10, 213],
] as const

/** That the bytes are UTF-8 is said in 12 bits: in what the end mark leaves, and in the room of one of them. */
const said = 1

test.each(capacities)(
  'a code of version %i holds %i bytes with what says how they are read',
  (version, bytes) => {
    const side = (length: number): number =>
      generate('a'.repeat(length), { minCorrectionLevel: correction.M }).size
    expect(side(bytes - said)).toBe(17 + 4 * version)
    expect(side(bytes - said + 1)).toBe(17 + 4 * (version + 1))
  },
)
