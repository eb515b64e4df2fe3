import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { cardFiles, cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { rowText } from '@/link/card-text.ts'

const files = cardFiles(cardsFolder)
const rowsOf = (id: string): string[] => (files.get(id)?.rows ?? []).map(rowText)

/** Longest run of one mark in a row that joins itself, as a float joins the next repeat. */
const longestFloat = (row: string): number => {
  if (/^(.)\1*$/.test(row)) return row.length
  return Math.max(...Array.from((row + row).matchAll(/o+|\.+/g), ([run]) => run.length))
}

const turned = (row: string, columns: number): string =>
  row.slice(row.length - columns) + row.slice(0, row.length - columns)

/** Each design: its rows, its longest float, how many rows have one over 5, and the move that leaves it as it is. */
const designs = [
  { id: 'harbour-star', rows: 32, longest: 5, over5: 0, move: [16, 12] },
  { id: 'fern', rows: 32, longest: 9, over5: 4, move: [16, 12] },
  { id: 'home-fleet', rows: 28, longest: 11, over5: 8, move: [14, 6] },
  { id: 'swallows', rows: 18, longest: 7, over5: 2, move: [9, 6] },
  { id: 'two-hearts', rows: 18, longest: 5, over5: 0, move: [9, 6] },
  { id: 'swell', rows: 16, longest: 7, over5: 4, move: [8, 12] },
  { id: 'buds', rows: 14, longest: 5, over5: 0, move: [7, 6] },
  { id: 'net-floats', rows: 12, longest: 5, over5: 0, move: [0, 12] },
  { id: 'pip-check', rows: 12, longest: 3, over5: 0, move: [3, 3] },
  { id: 'quay-steps', rows: 12, longest: 5, over5: 0, move: [6, 3] },
] as const

describe('the cards', () => {
  test('are those of this list, a card of holes and a blank one', () => {
    const ids = designs.map(({ id }) => id as string)
    expect([...files.keys()].sort()).toEqual([...ids, 'all-holes', 'blank'].sort())
  })

  test('each have a title of their own and a line about them', () => {
    const titles = [...files.values()].map(({ title }) => title)
    expect(new Set(titles).size).toBe(titles.length)
    for (const { title, about } of files.values()) {
      expect(title).toMatch(/^[A-Z][a-z -]+$/)
      expect(about).toMatch(/^[A-Z][\w ,:-]+\.$/)
    }
  })

  test.each(designs)(
    '$id has $rows rows, no float over $longest, and $over5 rows with one over 5',
    (design) => {
      const floats = rowsOf(design.id).map(longestFloat)
      expect(floats).toHaveLength(design.rows)
      expect(Math.max(...floats)).toBe(design.longest)
      expect(floats.filter((float) => float > 5)).toHaveLength(design.over5)
    },
  )

  test.each(designs)(
    '$id joins itself: moved by $move (rows, columns) around its edges it is the same',
    (design) => {
      const rows = rowsOf(design.id)
      const [down, along] = design.move
      expect(rows.map((_, n) => turned(rows[(n + down) % rows.length] ?? '', along))).toEqual(rows)
      expect(new Set(rows).size).toBeGreaterThanOrEqual(4)
    },
  )

  test.each([
    ['all-holes', 'o'],
    ['blank', '.'],
  ])('%s is nothing but that', (id, mark) => {
    expect(rowsOf(id)).toEqual(new Array(4).fill(mark.repeat(24)))
  })
})

describe('the main card', () => {
  const rows = rowsOf('harbour-star')
  const holes = (row: string): string => `${row[2]}${row[10]}${row[18]}`

  test('starts with holes in columns 3, 11 and 19 and a lively half of the others', () => {
    expect(holes(rows[0] ?? '')).toBe('ooo')
    expect(rows[0]?.replaceAll('.', '')).toHaveLength(12)
    expect(new Set([1, 2, 3, 4, 5, 6, 7].map((column) => turned(rows[0] ?? '', column))).size).toBe(7)
  })

  test('shows a trouble of strip 3 in every row, and at all three columns in 20 of the 32', () => {
    expect(rows.every((row) => holes(row).includes('o'))).toBe(true)
    expect(rows.filter((row) => holes(row) === 'ooo')).toHaveLength(20)
  })
})

describe('a folder of cards', () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'cards-'))
  })
  afterEach(() => rmSync(folder, { recursive: true }))

  const put = (name: string, row: string): void =>
    writeFileSync(join(folder, name), `title: A card\nabout: A trial.\n\n${row}\n`)

  test('is a library by the names of its files, with the main card named', () => {
    put('harbour-star.txt', 'o'.repeat(24))
    put('other.txt', '.'.repeat(24))
    put('README.md', 'not a card')
    const cards = new Map([
      ['harbour-star', [0xffffff]],
      ['other', [0]],
    ])
    expect(cardLibrary(folder)).toEqual({ main: 'harbour-star', cards })
  })

  test('without the main card is refused', () => {
    put('other.txt', '.'.repeat(24))
    expect(() => cardLibrary(folder)).toThrow('The main card, harbour-star.txt, is missing')
  })

  test('with a bad card is refused, naming its file and line', () => {
    put('harbour-star.txt', 'o'.repeat(23))
    expect(() => cardLibrary(folder)).toThrow(/^harbour-star\.txt, line 4: expected 24 characters/)
  })
})
