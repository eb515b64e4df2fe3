import { describe, expect, test } from 'vitest'
import { drawCard } from '@/find/draw-card.ts'
import { hasHole } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'

/** The codes of a card's columns, each a mark a row. */
const codesOf = (card: readonly number[]): string[] =>
  Array.from({ length: 24 }, (_, n) =>
    card.map((row) => (hasHole(row, toColumn(n + 1)) ? 'o' : '.')).join(''),
  )
const holesIn = (code: string): number => code.replaceAll('.', '').length
const isWithin = (one: string, other: string): boolean =>
  [...one].every((mark, n) => mark === '.' || other[n] === 'o')

describe.each([
  [3, 3],
  [4, 6],
  [5, 20],
  [6, 20],
])('a card drawn for the test, of %i rows with %i codes', (rows, codesToHave) => {
  const cards = Array.from({ length: 12 }, (_, seed) => codesOf(drawCard(rows, seed)))

  test('has as many holes as blanks in each column, or nearly, and two blanks at least', () => {
    for (const code of cards.flat()) {
      expect(code).toHaveLength(rows)
      expect([Math.floor(rows / 2), Math.ceil(rows / 2)]).toContain(holesIn(code))
      expect(rows - holesIn(code)).toBeGreaterThanOrEqual(2)
    }
    const counts = new Set(cards.flat().map(holesIn))
    expect(counts.size).toBe(rows === 5 ? 2 : 1)
  })

  test('has no column within another of its strip', () => {
    for (const codes of cards)
      for (const [n, one] of codes.entries())
        for (const [m, other] of codes.entries())
          if (n !== m && n % 8 === m % 8) expect(isWithin(one, other)).toBe(false)
  })

  test('has each code about as often as any other', () => {
    for (const codes of cards) {
      const used = [...new Set(codes)]
      expect(used).toHaveLength(codesToHave)
      for (const one of used)
        expect(codes.filter((code) => code === one).length).toBeLessThanOrEqual(
          Math.ceil(24 / codesToHave) + 1,
        )
    }
  })

  test('is another for another seed, and lets chance give any code to the first column', () => {
    expect(new Set(cards.map(String)).size).toBe(12)
    const first = new Set(Array.from({ length: 200 }, (_, seed) => codesOf(drawCard(rows, seed * 7919))[0]))
    expect(first.size).toBe(codesToHave)
  })
})

test('the cards drawn are the same for ever, as printed ones must be', () => {
  expect(drawCard(3, 1000)).toEqual([0x24ca11, 0x8a1164, 0x51248a])
  expect(drawCard(4, 1001)).toEqual([0xe1539a, 0x4e9d29, 0x34e8f6, 0x9b2645])
  expect(drawCard(5, 3)).toEqual([0xa384fe, 0x51be4d, 0x1863f6, 0xad1b22, 0x765519])
})
