import { expect, test } from 'vitest'
import { bedsOf, singlesFound } from '@/find/proof.ts'
import { testCard } from '@/find/test-card.ts'

const found = testCard()

test('faults of one class leave the very same beds, so that one may stand for all', () => {
  for (const members of found.classes) {
    const beds = members.map(({ fault }) => bedsOf(found.dictionary, [fault], 1).join(' '))
    if (new Set(beds).size !== 1) expect.fail(members.map(({ id }) => id).join(' '))
  }
})

test(
  'every single fault, seen without error, comes back with its own class on top: all of them',
  { timeout: 60_000 },
  () => {
    const { tried, missed } = singlesFound(found, 0)
    expect(tried).toBe(found.dictionary.entries.length)
    expect(missed).toEqual([])
  },
)
