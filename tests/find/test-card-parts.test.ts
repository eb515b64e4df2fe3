import { usualPlace } from '@/mechanism/bed.ts'
import { expect, test } from 'vitest'
import { computeTestCard, type Progress, type TestCard } from '@/find/test-card.ts'
import { hasHole } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'

// One search for all, since it takes longer than any other of the quick tests.
test('the search for a test card counts its tries, keeps the best, and stops at the first card that lacks nothing', () => {
  const steps: Progress[] = []
  const search = computeTestCard(3)
  let step = search.next()
  for (; !step.done; step = search.next()) steps.push(step.value)
  const found: TestCard = step.value

  expect([found.classes.length, found.hidden.length]).toEqual([found.most, 0])
  // Three more passes, and so two more classes for each of three more turns.
  expect(found.most - steps[0]!.most).toBe(6)
  // The first card hides a fault; the second is the same for ever, as one that was punched must be.
  expect(steps.map(({ tried }) => tried)).toEqual([1, 2])
  expect(found.card).toEqual([0x498630, 0x84700b, 0x3209c4])
  expect([found.fewest, found.forCodes, found.toSeparate]).toEqual([3, 5, 7])
  expect(steps.every(({ rows }) => rows === 3)).toBe(true)
  const lacking = steps.map(({ most, classes }) => most - classes)
  expect(lacking).toEqual([...lacking].sort((one, other) => other - one))
  expect(lacking.at(-1)).toBe(0)
  expect(steps.at(-1)!.most).toBe(steps[0]!.most)

  // Each column of a strip has a code that lies in no other's.
  const codes = Array.from({ length: 24 }, (_, n) =>
    found.card.map((row) => (hasHole(row, toColumn(n + 1)) ? 'o' : '.')).join(''),
  )
  expect(new Set(codes)).toEqual(new Set(['o..', '.o.', '..o']))
  for (let strip = 0; strip < 8; strip++)
    expect(new Set([codes[strip], codes[strip + 8], codes[strip + 16]]).size).toBe(3)

  // The card is run through, and once more where a fault shows too little.
  expect(found.runs).toEqual([500, 90, 900, 900])
  const { views } = found.dictionary
  expect(views).toHaveLength(13)
  expect(views.slice(0, 12).map(({ pass }) => pass)).toEqual(Array.from({ length: 12 }, (_, n) => n + 1))
  expect(views.map(({ speed }) => speed)).toEqual(
    [500, 90, 900, 900].flatMap((speed) => [speed, speed, speed]).concat(500),
  )
  expect(views.at(-1)).toEqual({ card: null, pass: 1, speed: 500, shift: null, ...usualPlace })
  expect(views[4]!.shift).toBe(0)
})
