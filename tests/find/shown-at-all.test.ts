import { usualPlace } from '@/mechanism/bed.ts'
import { expect, test } from 'vitest'
import { type Entry, isShown } from '@/find/dictionary.ts'
import { reachOf } from '@/find/entries.ts'
import { faultOf } from '@/mechanism/read-fault.ts'

const entry = (...shown: readonly [changes: number, chance: number][]): Entry => ({
  fault: faultOf('strip.3.seized'),
  id: 'strip.3.seized',
  reach: reachOf(faultOf('strip.3.seized'), usualPlace),
  shown: shown.map(([changes, chance]) => ({ changed: new Uint16Array(changes), chance })),
  key: '',
})

test('an entry is shown where it changes needles, or may, in one view at least', () => {
  expect(isShown(entry([0, 0], [0, 0]))).toBe(false)
  expect(isShown(entry())).toBe(false)
  expect(isShown(entry([0, 0], [1, 0]))).toBe(true)
  expect(isShown(entry([0, 0.1], [0, 0]))).toBe(true)
})
