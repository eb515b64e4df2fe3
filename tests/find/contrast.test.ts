import { expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { exampleOf, type Look, lookAt } from '@/find/battery.ts'
import { contrastOf, plainestOf, tellingLooks } from '@/find/contrast.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { lookWords } from '@/words/symptoms.ts'

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

test.each([
  ['card.torn', 'blank 2 500', '-', 'blank 1 500, blank 2 500'],
  ['card.blocked', 'pattern 2 500', '-', 'pattern 1 500, pattern 2 500'],
  ['card.side', 'blank 1 500', '-', 'pattern 1 500, blank 1 500'],
  ['card.skew', 'blank 1 500', '-', 'pattern 1 500, blank 1 500'],
  ['card.reversed', 'holes 1 500', '-', 'pattern 1 500, holes 1 500'],
  ['card.locked', 'pattern 1 500', '-', 'pattern 2 500, pattern 1 500'],
  ['pawl.right', 'pattern 1 500', '-', 'pattern 2 500, pattern 1 500'],
  ['pawl.left', 'pattern 1 500', '-', 'pattern 3 500, pattern 1 500'],
  ['pawl.double', 'pattern 1 500', '-', 'pattern 2 500, pattern 1 500'],
  ['turn.short', 'pattern 1 500', '-', 'pattern 2 500, pattern 1 500'],
  ['pin.low', 'pattern 3 500', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['pin.high', 'pattern 1 500', 'blank 1 500', 'pattern 3 500, blank 1 500'],
  ['pin.over', 'pattern 3 500', '-', 'pattern 1 500, pattern 3 500'],
  ['sweep.worn', 'blank 1 500', '-', 'pattern 1 500, blank 1 500'],
  ['belt.timing', 'blank 1 500', '-', 'pattern 1 500, blank 1 500'],
  ['belt.slack', 'blank 1 500', '-', 'pattern 1 500, blank 1 500'],
  ['rocker.dead', 'pattern 3 500', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['rocker.worn', 'pattern 3 500', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['strip.seized', 'blank 1 500', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['strip.over', 'holes 1 500', 'blank 1 500', 'pattern 1 500, blank 1 500'],
  ['strip.slow', 'pattern 1 90', '-', 'pattern 1 500, pattern 1 90'],
  ['catch.broken', 'pattern 3 500', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['needle.bent', 'pattern 3 500', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['needle.gone', '-', 'holes 1 500', 'pattern 1 500, holes 1 500'],
  ['presser.right.worn', 'pattern 2 500', '-', 'pattern 1 500, pattern 2 500'],
  ['presser.left.worn', 'pattern 1 500', '-', 'pattern 2 500, pattern 1 500'],
  ['needle.stiff', 'pattern 1 500', '-', 'pattern 3 500, pattern 1 500'],
  ['retainer.worn', 'pattern 1 90', '-', 'pattern 1 500, pattern 1 90'],
  ['gate.1.low', 'blank 1 500', '-', 'pattern 1 500, blank 1 500'],
  ['gate.1.high', 'holes 1 500', '-', 'pattern 1 500, holes 1 500'],
] as const)('%s: contrast %s, plainest %s, shown by %s', (kind, contrast, plainest, telling) => {
  const written = (look: Look | null): string => (look ? `${look.card} ${look.pass} ${look.speed}` : '-')
  expect(written(contrastOf(kind, pattern))).toBe(contrast)
  expect(written(plainestOf(kind, pattern))).toBe(plainest)
  expect(tellingLooks(kind, pattern).map(written).join(', ')).toBe(telling)
})
