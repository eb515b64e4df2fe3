import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { exampleOf, lookAt } from '@/find/battery.ts'
import { contrastOf, plainestOf, tellingLooks } from '@/find/contrast.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { lookWords } from '@/words/looks.ts'

const pattern = cardLibrary(cardsFolder).cards.get('harbour-star')!
const kinds = Object.keys(faultKinds) as FaultKindName[]

test('a contrasting look shows nothing wrong; only a needle without a butt has none, as every look shows it', () => {
  const without = kinds.filter((kind) => {
    const look = contrastOf(kind, pattern)
    if (look) expect(lookAt([exampleOf(kind)], look, pattern).departures).toEqual([])
    return look === null
  })
  expect(without).toEqual(['needle.gone'])
})

test.each([
  ['strip.slow', 'a patterned card, pass 1 to the right, slowly'],
  ['presser.right.worn', 'a patterned card, pass 2 to the left'],
  ['presser.left.worn', 'a patterned card, pass 1 to the right'],
  ['strip.seized', 'a blank card, pass 1 to the right'],
  ['strip.over', 'a card of all holes, pass 1 to the right'],
] as const)('%s is brought out by what it differs in: %s', (kind, words) => {
  expect(lookWords(contrastOf(kind, pattern)!)).toBe(words)
})

test.each([
  ['strip.seized', 'a card of all holes, pass 1 to the right', 25],
  ['strip.over', 'a blank card, pass 1 to the right', 25],
  ['pin.low', 'a card of all holes, pass 1 to the right', 8],
  ['catch.broken', 'a card of all holes, pass 1 to the right', 1],
] as const)('%s shows plainest with %s', (kind, words, count) => {
  const look = plainestOf(kind, pattern)!
  expect(lookWords(look)).toBe(words)
  expect(lookAt([exampleOf(kind)], look, pattern).departures).toHaveLength(count)
})

test('every kind has a look that shows it, and a second one that is another', () => {
  for (const kind of kinds) {
    const [first, second] = tellingLooks(kind, pattern)
    expect(lookAt([exampleOf(kind)], first!, pattern).departures).not.toEqual([])
    expect(second, kind).toBeDefined()
    expect(second).not.toBe(first)
  }
})
