import { describe, expect, test } from 'vitest'
import { normalDraw, type Stream } from '@/mechanism/random.ts'
import { count } from './make.ts'

/**
 * MurmurHash3's finaliser and Box and Muller's transform, written out with whole numbers of any size: a second way to
 * the same draws, which no later version may change, since a seed in a link names a certain worn machine.
 */
const word = (value: bigint): bigint => BigInt.asUintN(32, value)
const mixed = (hash: bigint, more: bigint): bigint => {
  let h = word((hash ^ more) * 0x9e3779b1n)
  h = word((h ^ (h >> 16n)) * 0x85ebca6bn)
  h = word((h ^ (h >> 13n)) * 0xc2b2ae35n)
  return h ^ (h >> 16n)
}
const streams: readonly Stream[] = ['pin', 'lost', 'catch', 'butt', 'retainer']
const drawn = (seed: number, stream: Stream, index: number, pass: number): number => {
  const parts = [seed, streams.indexOf(stream) + 1, index + 1, pass].map(BigInt)
  const hash = parts.reduce(mixed, 0x5bd1e995n)
  const share = (value: bigint): number => (Number(value) + 0.5) / 2 ** 32
  return Math.sqrt(-2 * Math.log(share(hash))) * Math.cos(2 * Math.PI * share(mixed(hash, 0x27d4eb2fn)))
}

describe('the draws of a seed', () => {
  test.each<[number, Stream, number, number, number]>([
    [1, 'pin', 0, 0, -0.761164235],
    [1, 'lost', 0, 0, -0.43139977],
    [1, 'catch', 0, 0, 1.623548724],
    [1, 'butt', 0, 0, -1.108997846],
    [1, 'retainer', 0, 1, -0.146310753],
    [1, 'retainer', 0, 2, 0.19533264],
    [0xffffffff, 'butt', 199, 0, -0.519960096],
    [24, 'retainer', 57, 9999, -1.087863429],
  ])('%i for %s %i in pass %i is %d for ever', (seed, stream, index, pass, value) => {
    expect(normalDraw(seed, stream, index, pass)).toBeCloseTo(value, 8)
  })

  test('are those of the published hash and transform', () => {
    for (const seed of [0, 1, 24, 2 ** 31, 2 ** 32 - 1])
      for (const stream of streams)
        for (const index of [0, 23, 199])
          for (const pass of [0, 1, 9999])
            expect(normalDraw(seed, stream, index, pass)).toBeCloseTo(drawn(seed, stream, index, pass), 12)
  })

  test('are of no pass where none is named', () => {
    for (const index of count(0, 9)) expect(normalDraw(5, 'pin', index)).toBe(normalDraw(5, 'pin', index, 0))
  })
})
