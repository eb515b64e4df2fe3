import { expect, test } from 'vitest'
import { bedsOf, singlesFound, withSlips } from '@/find/proof.ts'
import { testCard } from '@/find/test-card.ts'

const found = testCard()

test(
  'with one needle in fifty noted wrongly, at least 97 in 100 faults come back on top',
  { timeout: 90_000 },
  () => {
    const { tried, found: count, missed } = singlesFound(found, 0.02, 7)
    expect(tried).toBe(found.dictionary.entries.length)
    expect(count / tried, missed.join(' ')).toBeGreaterThanOrEqual(0.97)
  },
)

test('slips are as many as said, and each another letter', () => {
  const beds = bedsOf(found.dictionary, [], 1)
  let wrong = 0
  for (let seed = 1; seed <= 20; seed++)
    for (const [n, bed] of withSlips(beds, 0.02, seed).entries()) {
      expect(bed).toMatch(/^[spu]{200}$/)
      for (const [index, letter] of [...bed].entries()) if (letter !== beds[n]![index]) wrong++
    }
  const needles = 20 * 200 * beds.length
  expect(Math.abs(wrong - 0.02 * needles)).toBeLessThan(5 * Math.sqrt(0.02 * 0.98 * needles))
  expect(withSlips(beds, 0, 1)).toEqual(beds)
})
