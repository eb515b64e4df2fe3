import { expect, test, vi } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'

vi.mock('@/site/faults.ts', () => {
  const library = cardLibrary(cardsFolder)
  return { patternCard: library.cards.get(library.main) }
})
const { turnNames, turnTable } = await import('@/site/turn-table.ts')

test('a teacher’s table of turns has the rows that each machine reads, pass by pass', () => {
  const columns = turnNames.map((_, n) => turnTable(9).map(({ rows }) => rows[n]))
  expect(columns).toEqual([
    [1, 2, 3, 4, 5, 6, 7, 8, 9],
    [1, 2, 3, 4, 4, 5, 6, 7, 8],
    // The turns at the right come before passes 2, 4, 6 and 8.
    [1, 1, 2, 2, 3, 3, 4, 4, 5],
    [1, 2, 2, 3, 3, 4, 4, 5, 5],
  ])
  expect(turnTable(3).map(({ way }) => way)).toEqual(['right', 'left', 'right'])
})
