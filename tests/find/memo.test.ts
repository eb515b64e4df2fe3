import { describe, expect, test, vi } from 'vitest'
import { slips } from '@/find/chances.ts'
import { infer } from '@/find/infer.ts'
import { Memo } from '@/find/memo.ts'
import type { Query } from '@/find/query.ts'
import { usualPlace } from '@/mechanism/bed.ts'

const card = [0xffffff, 0x0f0f0f]
const beds = ['s'.repeat(200), 'sp'.repeat(100)]
const queryOf = (...marks: readonly number[]): Query => ({
  ...usualPlace,
  card,
  passes: beds.map((bed, n) => ({
    card,
    row: n + 1,
    way: n === 0 ? 1 : -1,
    speed: 500,
    pass: n + 1,
    needles: [...bed].map((letter, needle) => (n === 0 && marks.includes(needle) ? 'p' : letter)).join(''),
  })),
  slip: slips.sure,
  checks: [],
})

describe('what was computed before', { timeout: 180_000 }, () => {
  test('changes no answer: a mark after others says what it says by itself', async () => {
    for (const marks of [[3], [3, 11], [3, 11, 19]]) infer(queryOf(...marks))
    const after = infer(queryOf(3, 11, 19, 27))
    vi.resetModules()
    const fresh = await import('@/find/infer.ts')
    expect(fresh.infer).not.toBe(infer)
    expect(after).toEqual(fresh.infer(queryOf(3, 11, 19, 27)))
    expect(after).not.toEqual(infer(queryOf(3, 11, 19)))
  })

  test('depends on what was found by hand, on the slip, and on where column 1 is', () => {
    const query = queryOf(3, 11)
    const others: Query[] = [
      { ...query, slip: slips.rough },
      { ...query, checks: [{ check: 'strips', found: null }] },
      { ...query, columnOne: (query.columnOne + 1) as Query['columnOne'] },
    ]
    const own = infer(query).places
    for (const other of others) expect(infer(other).places).not.toEqual(own)
  })

  test('is forgotten where it was not asked for while as much again came after it as may be held', () => {
    const memo = new Memo<number>(2)
    let made = 0
    const of = (key: string): number => memo.of(key, () => ++made)
    expect([of('a'), of('a'), of('b'), of('a')]).toEqual([1, 1, 2, 1])
    expect([of('c'), of('a'), of('d'), of('a')]).toEqual([3, 1, 4, 1])
    expect(of('b')).toBe(5)
  })

  test('never holds more than twice what it may', () => {
    const memo = new Memo<number>(5)
    for (let n = 0; n < 100; n++) memo.of(String((n * 7) % 31), () => n)
    expect(memo.size).toBeLessThanOrEqual(10)
  })
})
