import { expect, test } from 'vitest'
import { rowsOnSheet } from '@/site/test-card-rows.ts'
import { punchSheet, usualSheet } from '@/drawings/punch-sheet/punch-sheet.ts'

const settings = { ...usualSheet, paper: 'A4 or Letter' } as const

test('a short card fills one page with whole repeats of itself, and no more would fit', () => {
  const card = [1, 2, 4]
  const rows = rowsOnSheet(card, settings)
  expect(rows.length % card.length).toBe(0)
  expect(rows.every((row, n) => row === card[n % card.length])).toBe(true)
  const pages = (of: readonly number[]): number => punchSheet(of, settings, '').pages?.length ?? 0
  expect(pages(rows)).toBe(1)
  expect(pages([...rows, ...card])).toBe(2)
})
