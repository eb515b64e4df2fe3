import { expect, it } from 'vitest'
import { findFault } from '@/find/case.ts'
import { idsOf } from './ids.ts'

it('a case is worked through from the needles that were seen', () => {
  // R7 is needle 106, and every eighth is of its strip.
  const missed = Array.from({ length: 200 }, (_, n) => (n % 8 === 2 ? 'p' : 's')).join('')
  const { dictionary, suspects, next } = findFault({
    card: [0xffffff],
    passes: [{ row: 1, way: 1, speed: 500, needles: missed }],
  })
  expect(dictionary.views).toEqual([{ card: [0xffffff], pass: 1, speed: 500, shift: 0 }])
  expect(idsOf(suspects[0]!)).toContain('strip.7.seized')
  expect(next.map(({ check }) => check)).toContain('strips')
})
