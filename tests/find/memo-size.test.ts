import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Memo, shortNames } from '@/find/memo.ts'

describe('what was computed before', () => {
  test('is forgotten where it was not asked for while as much again came after it as may be held', () => {
    const memo = new Memo<number>(2)
    let made = 0
    const of = (key: string): number => memo.of(key, () => ++made)
    expect([of('a'), of('a'), of('b'), of('a')]).toEqual([1, 1, 2, 1])
    expect([of('c'), of('a'), of('d'), of('a')]).toEqual([3, 1, 4, 1])
    expect(of('b')).toBe(5)
  })

  test('is never more than twice what may be held, whatever is asked for', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(40), { maxLength: 300 }), (keys) => {
        const memo = new Memo<number>(5)
        for (const key of keys) expect(memo.of(String(key), () => key)).toBe(key)
        expect(memo.size).toBeLessThanOrEqual(10)
      }),
    )
  })

  test('has one short name for each text', () => {
    const nameOf = shortNames(10)
    expect(nameOf('one')).toBe(nameOf('one'))
    expect(nameOf('one')).not.toBe(nameOf('another'))
  })
})
