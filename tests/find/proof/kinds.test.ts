import { expect, test } from 'vitest'
import { bedsOf, kindsFound } from '@/find/kinds-found.ts'
import { testCard } from '@/find/test-card.ts'
import { hasHole } from '@/mechanism/card.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { toColumn } from '@/mechanism/indices.ts'

const found = testCard()

test(
  'faults of one class leave the very same beds, so that one may stand for all',
  { timeout: 90_000 },
  () => {
    for (const members of found.classes) {
      const beds = members.map(({ fault }) => bedsOf(found.dictionary, [fault], 1).join(' '))
      if (new Set(beds).size !== 1) expect.fail(members.map(({ id }) => id).join(' '))
    }
  },
)

/** What is not named: a blocked hole, beside a pin that stays down at each turn to its row, which comes oftener. */
const notNamed = 'card.blocked.2.16'

test(
  'a fault of each kind, seen through the test card, is found at its place, but for one',
  { timeout: 300_000 },
  () => {
    const { tried, missed } = kindsFound(found)
    expect(tried).toBe(new Set(found.dictionary.entries.map(({ fault }) => fault.kind)).size)
    expect(missed).toEqual([notNamed])
  },
)

test('no look at the test card parts that one from a sticky pin that stays down in its row each time', () => {
  const { card, dictionary } = found
  // The card asks for that column in that row only, and a pin that has stuck may rise in the pass without a card.
  const rows = card.flatMap((row, n) => (hasHole(row, toColumn(16)) ? [n + 1] : []))
  expect(rows).toEqual([2])
  const [blocked, low, sound] = [[notNamed], ['pin.16.low'], []].map((ids) =>
    bedsOf(dictionary, ids.map(faultOf), 1),
  )
  expect(blocked).toEqual(dictionary.views.map((view, n) => (view.card ? low : sound)![n]))
})
