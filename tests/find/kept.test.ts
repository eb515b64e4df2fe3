import { expect, test } from 'vitest'
import { keptFor } from '@/find/kept.ts'

test('what is made of some keys is made once for each of them', () => {
  let made = 0
  const of = keptFor((one: object, number: number, other: object) => ({ one, number, other, nth: ++made }))
  const [a, b] = [{}, {}]
  const first = of(a, 1, b)
  expect(first).toEqual({ one: a, number: 1, other: b, nth: 1 })
  expect(of(a, 1, b)).toBe(first)
  expect([of(b, 1, a), of(a, 2, b), of(a, 1, a)].map(({ nth }) => nth)).toEqual([2, 3, 4])
  expect(of(a, 1, b)).toBe(first)
})
