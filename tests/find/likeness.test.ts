import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { exampleOf, lookAt, standardLooks } from '@/find/battery.ts'
import { firstShown, likenesses, type Symptom, symptomOf } from '@/find/likeness.ts'
import { faultKinds, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { lookWords, passOutcomeWords } from '@/words/symptoms.ts'

const pattern = cardLibrary(cardsFolder).cards.get('harbour-star')!
const kinds = Object.keys(faultKinds) as FaultKindName[]

/** How each kind is seen, as the trade would say it from the fault table, not from the model. */
const seenAs: Readonly<Record<Symptom, readonly FaultKindName[]>> = {
  eighth: ['strip.seized', 'strip.over', 'pin.over'],
  twentyFourth: ['pin.low', 'pin.high', 'rocker.dead', 'rocker.worn', 'pin.sticky'],
  one: ['catch.broken', 'needle.bent', 'needle.gone'],
  nothing: [
    'carriage.plain',
    'belt.off',
    'card.side',
    'card.skew',
    'sweep.worn',
    'belt.timing',
    'belt.slack',
    'gate.1.low',
    'pivots.loose',
  ],
  everything: ['gate.1.high'],
  oneWay: ['presser.right.worn', 'presser.left.worn'],
  fast: ['strip.slow', 'needle.stiff', 'retainer.worn'],
  oneRow: ['card.torn', 'card.blocked'],
  rows: [
    'card.reversed',
    'card.locked',
    'pawl.right',
    'pawl.left',
    'pawl.double',
    'turn.short',
    'turn.twice',
    'pawl.skips',
    'pawl.jumps',
  ],
}

describe('how a fault is seen', () => {
  test('each sight holds the kinds that the trade would look up there', () => {
    const seen = kinds.map((kind) => ({ kind, sight: symptomOf(kind, pattern) }))
    for (const [sight, expected] of Object.entries(seenAs))
      expect(
        seen.filter((one) => one.sight === sight).map(({ kind }) => kind),
        sight,
      ).toEqual(kinds.filter((kind) => expected.includes(kind)))
  })
  test('every kind shows in some look at its usual amount', () => {
    for (const kind of kinds) expect(firstShown(kind, pattern), kind).not.toBeNull()
  })
})

describe('what a fault is confused with', () => {
  const apart = (kind: FaultKindName, other: FaultKindName) =>
    likenesses(kind, pattern).find((likeness) => likeness.kind === other)
  test('a broken catch and a bent butt can’t be told apart from outside', () => {
    expect(apart('catch.broken', 'needle.bent')).toEqual({ kind: 'needle.bent', apart: null })
  })
  test('a low pin and a dead rocker can’t, but the next card row parts them from a blocked hole', () => {
    expect(apart('pin.low', 'rocker.dead')?.apart).toBeNull()
    expect(apart('pin.low', 'card.blocked')?.apart?.pass).toBe(2)
  })
  test('the other way parts a worn presser from a low gate', () => {
    expect(apart('presser.right.worn', 'gate.1.low')?.apart?.pass).toBe(2)
  })
  test('a seized strip is like no other single fault', () => {
    expect(likenesses('strip.seized', pattern)).toEqual([])
  })
})

describe('looks in words', () => {
  test('name the card, the way and the speed, and count what came out', () => {
    expect(lookWords(standardLooks[0]!)).toBe('a patterned card, pass 1 to the right')
    expect(lookWords({ card: 'blank', pass: 2, speed: 90 })).toBe('a blank card, pass 2 to the left, slowly')
    const holes = standardLooks.find(({ card, pass }) => card === 'holes' && pass === 1)!
    expect(passOutcomeWords(lookAt([exampleOf('strip.seized')], holes, pattern))).toBe(
      'every eighth needle: 25 missed',
    )
    expect(passOutcomeWords(lookAt([], holes, pattern))).toBe('as it should')
    expect(passOutcomeWords(lookAt([exampleOf('needle.gone')], holes, pattern))).toBe(
      'one needle: 1 needle not moved',
    )
  })
})
