import { describe, expect, test } from 'vitest'
import {
  addRow,
  emptyCard,
  removeRows,
  repeatRows,
  shiftColumns,
  shiftRows,
  withHole,
} from '@/link/card-edit.ts'
import { writeCardFile } from '@/link/card-file.ts'
import { pasteCard } from '@/link/card-paste.ts'
import { brightnessOf, cardOfCells, cellAverages, usualRows, usualThreshold } from '@/link/card-picture.ts'
import { readCardFile, rowText } from '@/link/card-text.ts'

const row = 'o..oo..oo..oo..oo..oo..o'
const rows = (text: string): string[] => pasteCard(text).rows.map(rowText)

describe('a change to a card at its edges', () => {
  test.each([
    [withHole([0, 0], 1, 1.5, true), 'There is no column 1.5: a card has columns 1 to 24.'],
    [withHole([0], -1, 1, true), 'There is no row -1: this card has 1 row.'],
    [addRow([0, 0], -1), 'There is no row -1: this card has rows 1 to 2.'],
    [addRow([0, 0], 0.5), 'There is no row 0.5: this card has rows 1 to 2.'],
    [
      addRow(new Array<number>(200).fill(0), 200),
      'That would make 201 rows. A card has at most 200 rows here.',
    ],
    [removeRows([1, 2, 3], 0, 2), 'There is no row 0: this card has rows 1 to 3.'],
    [removeRows([1, 2, 3], 4, 5), 'There is no row 4: this card has rows 1 to 3.'],
    [removeRows([1, 2, 3], 3, 2), 'Row 3 comes after row 2. Name the lower row first.'],
    [removeRows([1, 2, 3], 1, 3), 'A card has at least 1 row, so one of them must stay.'],
    [repeatRows([1, 2, 3], 2, 4, 2), 'There is no row 4: this card has rows 1 to 3.'],
    [repeatRows([1, 2, 3], 3, 1, 2), 'Row 3 comes after row 1. Name the lower row first.'],
    [repeatRows([1, 2], 1, 2, 101), 'That would make 202 rows. A card has at most 200 rows here.'],
    [emptyCard(0.5), 'A card has at least 1 row.'],
    [emptyCard(201), 'That would make 201 rows. A card has at most 200 rows here.'],
  ])('is refused with its reason (case %#)', (edit, reason) => {
    expect(edit).toEqual({ rows: null, reason })
  })

  test('is made up to them', () => {
    expect(withHole([0, 0], 2, 24, true)).toEqual({ rows: [0, 1] })
    expect(withHole([0, 0], 1, 1, true)).toEqual({ rows: [0x800000, 0] })
    expect(withHole([0xffffff], 1, 24, false)).toEqual({ rows: [0xfffffe] })
    expect(emptyCard(1)).toEqual({ rows: [0] })
    expect(removeRows([1, 2, 3], 2, 2)).toEqual({ rows: [1, 3] })
    expect(removeRows([1, 2, 3], 1, 2)).toEqual({ rows: [3] })
    expect(repeatRows([1, 2], 1, 2, 100)).toMatchObject({ rows: { length: 200 } })
    expect(repeatRows([1, 2, 3], 3, 3, 2)).toEqual({ rows: [1, 2, 3, 3] })
    expect(addRow(new Array<number>(199).fill(7), 199)).toMatchObject({ rows: { length: 200 } })
  })

  test('by shifting goes round', () => {
    expect(shiftColumns([1], 1)).toEqual([0x800000])
    expect(shiftColumns([1], -1)).toEqual([2])
    expect(shiftColumns([1], 25)).toEqual([0x800000])
    expect(shiftColumns([1], -25)).toEqual([2])
    expect(shiftColumns([0xabcdef], 24)).toEqual([0xabcdef])
    expect(shiftRows([1, 2, 3], 4)).toEqual([3, 1, 2])
    expect(shiftRows([1, 2, 3], -4)).toEqual([2, 3, 1])
  })
})

describe('a pasted text', () => {
  test.each([
    ['a byte order mark', `\uFEFF${row}`],
    ['marks of emoji', row.replaceAll('o', '⬤\uFE0F')],
    ['blanks of no width', row.replaceAll('o', 'o\u200B')],
    ['blanks that do not break', row.replaceAll('o', 'o\u00A0')],
  ])('may hold %s', (_, text) => {
    expect(rows(text)).toEqual([row])
  })

  test.each(['\n', '\r\n', '\r', '\u0085', '\u2028', '\u2029'])('may end its lines by %j', (end) => {
    expect(rows(`${row}${end}${row}${end}`)).toEqual([row, row])
  })

  test('is cut only where it is longer than its most', () => {
    const long = (length: number): string => `${row}\n`.padEnd(length, ' ')
    expect(pasteCard(long(100_000)).problems).toEqual([])
    expect(pasteCard(long(100_001)).problems).toEqual([
      'The text is longer than 100000 characters and is cut there.',
    ])
  })

  test.each([
    [`title: Waves\n${row}`, 'Waves'],
    [`TITLE : Waves\n\n${row}`, 'Waves'],
    [`  title:Waves  \nabout: Mine.\n\n${row}`, 'Waves'],
    [`about: Mine.\ntitle: Waves\n${row}`, 'Waves'],
    [`\n\ntitle: Waves\n${row}`, 'Waves'],
    [`title: One\ntitle: Two\n${row}`, 'Two'],
    [`title:\n${row}`, null],
    [`title: ${'x'.repeat(100)}\n${row}`, `${'x'.repeat(80)}…`],
    [`about: Mine.\n${row}`, null],
    [row, null],
    [`\n\n${row}`, null],
  ])('%j has this title: %s', (text, title) => {
    expect(pasteCard(text)).toMatchObject({ title, rows: { length: 1 }, problems: [] })
  })

  test('has no title after its first row', () => {
    const { title, problems } = pasteCard(`${row}\ntitle: Late\n${row}`)
    expect(title).toBeNull()
    expect(problems).toHaveLength(1)
    expect(pasteCard(`mytitle: Waves\n${row}`).title).toBeNull()
  })

  test('that is nothing but a head has no rows', () => {
    expect(pasteCard('title: Waves\n')).toEqual({ rows: [], title: 'Waves', problems: [], remarks: [] })
  })

  test.each([
    ['x.____', ['o'.repeat(24)]],
    ['  x.____  ', ['o'.repeat(24)]],
    ['card=x.____', ['o'.repeat(24)]],
    ['#card=x.____', ['o'.repeat(24)]],
    ['?card=x.____', ['o'.repeat(24)]],
    ['pass=2&card=x.____&wear=1', ['o'.repeat(24)]],
    ['https://example.org/a/#pass=2&card=x.____', ['o'.repeat(24)]],
  ])('%j is a link that carries its card', (text, expected) => {
    expect(pasteCard(text)).toEqual({
      rows: [0xffffff],
      title: null,
      problems: [],
      remarks: [],
    })
    expect(rows(text)).toEqual(expected)
  })

  test.each([
    ['card=fern', 'This link names the card “fern” and carries no rows of its own.'],
    ['#pass=2&card=fern', 'This link names the card “fern” and carries no rows of its own.'],
    ['http://example.org', 'This link names no card and carries no rows of its own.'],
    ['https://example.org/#pass=2', 'This link names no card and carries no rows of its own.'],
    ['https://example.org/#card=x.A', 'The link’s card can’t be read: it has no whole row of 24 columns.'],
    ['card=x.____A', 'The link’s card was cut: row 2 is not 24 columns wide, so the 1 before it stand.'],
  ])('%j is a link, and that is said: %s', (text, problem) => {
    const { problems, title, remarks } = pasteCard(text)
    expect({ problems, title, remarks }).toEqual({ problems: [problem], title: null, remarks: [] })
  })

  test.each(['discard=fern', 'see https://example.org now', 'https:// example', 'ax.____', 'x.__*_'])(
    '%j is no link but a row that can’t be read',
    (text) => {
      expect(pasteCard(text).problems.every((problem) => problem.startsWith('Row 1 is left out'))).toBe(true)
      expect(pasteCard(text).problems).toHaveLength(1)
    },
  )

  test('of 24 characters is a row, whatever a link looks like', () => {
    expect(rows(`x.${'_'.repeat(22)}`)).toEqual([`o${'.'.repeat(23)}`])
    expect(pasteCard(`x.${'_'.repeat(23)}`).problems).toEqual([
      'The link’s card was cut: row 6 is not 24 columns wide, so the 5 before it stand.',
    ])
  })
})

describe('a picture', () => {
  test.each([
    [24, 1, 1],
    [24, 200, 200],
    [24, 201, 200],
    [48, 3, 2],
    [1000, 20, 1],
  ])('of %d by %d pixels has %d rows as a rule', (width, height, count) => {
    expect(usualRows(width, height)).toBe(count)
  })

  test('is parted halfway between its darkest and its lightest cell, or in the middle where they are alike', () => {
    expect(
      usualThreshold([
        [10, 20],
        [90, 40],
      ]),
    ).toBe(50)
    expect(usualThreshold([[100, 101]])).toBe(101)
    expect(usualThreshold([[100, 100.9]])).toBe(128)
    expect(usualThreshold([[0, 255]])).toBe(128)
    expect(usualThreshold([[250, 255]])).toBe(253)
  })

  test('shows white through where it does not cover', () => {
    const shades = (...pixels: number[][]): number[] =>
      Array.from(brightnessOf(pixels.length, 1, pixels.flat()).values)
    const [red, green, blue, half, none] = shades(
      [255, 0, 0, 255],
      [0, 255, 0, 255],
      [0, 0, 255, 255],
      [0, 0, 0, 128],
      [7, 7, 7, 0],
    )
    expect(red).toBeCloseTo(255 * 0.2126, 3)
    expect(green).toBeCloseTo(255 * 0.7152, 3)
    expect(blue).toBeCloseTo(255 * 0.0722, 3)
    expect(half).toBeCloseTo(127, 3)
    expect(none).toBe(255)
    expect(brightnessOf(3, 2, new Uint8ClampedArray(24))).toMatchObject({ width: 3, height: 2 })
  })

  test('has a cell dark where it is under the threshold, and light at it', () => {
    const settings = { threshold: 100, holes: 'dark', isRow1AtBottom: false } as const
    const cells = [[99.9, 100, 100.1, ...new Array<number>(21).fill(200)]]
    expect(cardOfCells(cells, settings)).toEqual([0x800000])
    expect(cardOfCells(cells, { ...settings, holes: 'light' })).toEqual([0x7fffff])
  })

  test('of any size is weighed by the parts of its pixels that lie in a cell', () => {
    // Two pixels across 24 columns: the first twelve are in the one, the others in the other.
    const across = cellAverages({ width: 2, height: 1, values: [0, 240] }, 1)[0]!
    expect(across).toEqual([...new Array<number>(12).fill(0), ...new Array<number>(12).fill(240)])
    // 36 pixels: a cell has one and a half of them.
    const values = Array.from({ length: 36 }, (_, n) => n)
    const [first, second] = cellAverages({ width: 36, height: 1, values }, 1)[0]!
    expect(first).toBeCloseTo((0 + 1 * 0.5) / 1.5, 9)
    expect(second).toBeCloseTo((1 * 0.5 + 2) / 1.5, 9)
    // Three rows of pixels in two of cells.
    const down = cellAverages({ width: 1, height: 3, values: [10, 20, 60] }, 2).map(([cell]) => cell)
    expect(down[0]).toBeCloseTo((10 + 10) / 1.5, 9)
    expect(down[1]).toBeCloseTo((10 + 60) / 1.5, 9)
  })
})

describe('a card file', () => {
  test('is written with its title, what it is about, an empty line and its rows', () => {
    expect(writeCardFile({ title: ' Waves ', about: 'Mine.', rows: [0x800001, 0] })).toBe(
      `title: Waves\nabout: Mine.\n\no${'.'.repeat(22)}o\n${'.'.repeat(24)}\n`,
    )
    expect(writeCardFile({ title: '', about: '  ', rows: [0] })).toBe(
      `title: Own card\nabout: A card of its own.\n\n${'.'.repeat(24)}\n`,
    )
    expect(writeCardFile({ title: 'x'.repeat(90), about: 'a', rows: [0] })).toContain(
      `title: ${'x'.repeat(80)}…\n`,
    )
  })

  test.each([
    ['title: Waves', 'line 2: expected “about: …”, found “”'],
    ['title: Waves\nabout: Mine.', 'expected 1 to 200 rows, found 0'],
    ['title: Waves\nabout: Mine.\n', 'expected 1 to 200 rows, found 0'],
    [
      `title: Waves\nabout: Mine.\n\n${row}x`,
      `line 4: expected 24 characters, each “o” or “.”, found “${row}x”`,
    ],
    [
      `title: Waves\nabout: Mine.\n\nx${row}`,
      `line 4: expected 24 characters, each “o” or “.”, found “x${row}”`,
    ],
    [`title:Waves\nabout: Mine.\n\n${row}`, 'line 1: expected “title: …”, found “title:Waves”'],
    [`a title: Waves\nabout: Mine.\n\n${row}`, 'line 1: expected “title: …”, found “a title: Waves”'],
  ])('%j is refused: %s', (text, message) => {
    expect(() => readCardFile(text)).toThrow(new Error(message))
  })

  test('may have two hundred rows, and blanks round its words', () => {
    const text = `title:   Waves  \nabout:  Mine. \n\n${`${row}\n`.repeat(200)}`
    expect(readCardFile(text)).toMatchObject({ title: 'Waves', about: 'Mine.', rows: { length: 200 } })
  })
})
