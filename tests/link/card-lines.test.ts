import { describe, expect, test } from 'vitest'
import { countOf, linesOf } from '@/link/card-lines.ts'
import { hasVisibleBlank, isMark, marksOf } from '@/link/card-marks.ts'

const row = 'o..oo..oo..oo..oo..oo..o'
const read = (text: string) =>
  linesOf(text).lines.map(({ marks, number }) => `${number ?? '-'} ${marks.join('')}`)

describe('numbers in front of rows', () => {
  test.each([
    [[1, 2, 3], 1],
    [[7, 8], 1],
    [[3, 2, 1], -1],
    [[9, 8], -1],
    [[1, 3], 0],
    [[1, 1], 0],
    [[1, 2, 2], 0],
    [[1, 2, 1], 0],
    [[1], 0],
    [[], 0],
    [[1, null], 0],
    [[null, 1], 0],
    [[null, null], 0],
    [[1, 2, null, 4], 0],
  ] as const)('%j count by %i', (numbers, by) => {
    expect(countOf(numbers)).toBe(by)
  })

  test.each([
    [`3: ${row}`, `3 ${row}`],
    [`3 : ${row}`, `3 ${row}`],
    [`3) ${row}`, `3 ${row}`],
    [`3] ${row}`, `3 ${row}`],
    [`3. ${row}`, `3 ${row}`],
    [`  12: ${row}`, `12 ${row}`],
    [`Row 3: ${row}`, `3 ${row}`],
    [`ROW3:${row}`, `3 ${row}`],
    [`120: ${row}`, `120 ${row}`],
    [row, `- ${row}`],
    // A number with only a blank after it is one where what follows is a row.
    [`3 ${row}`, `3 ${row}`],
    [`row 3 ${row}`, `3 ${row}`],
    // A point at once before a mark is a mark itself.
    [`1.${'.'.repeat(22)}`, `- 1.${'.'.repeat(22)}`],
    [`1234: ${row}`, `- 1234:${row}`],
  ])('“%s” is read as “%s”', (text, line) => {
    expect(read(text)).toEqual([line])
  })

  test('are taken from lines that are no whole rows where all lines are numbered in turn', () => {
    expect(read('1 ooo\n2 o.o')).toEqual(['1 ooo', '2 o.o'])
    expect(read('1 ooo\n3 o.o')).toEqual(['- 1ooo', '- 3o.o'])
    expect(read('2 ooo\n1 o.o')).toEqual(['2 ooo', '1 o.o'])
  })
})

describe('the lines of a card’s text', () => {
  const cells = (separator: string, text = row): string => Array.from(text).join(separator)

  test.each([
    ['tabs', cells('\t')],
    ['commas', cells(',')],
    ['semicolons', cells(';')],
    ['commas and blanks', cells(' , ')],
    ['quotation marks', cells(',').replace(/[o.]/g, '"$&"')],
    ['a frame', `|${row}|`],
    ['bars between', cells('|')],
  ])('may have %s between their marks', (_, text) => {
    expect(read(text)).toEqual([`- ${row}`])
  })

  test('in a spreadsheet may have a number in the first cell, and nothing in an empty one', () => {
    expect(read(`7,${cells(',')}`)).toEqual([`7 ${row}`])
    expect(read(`123\t${cells('\t')}`)).toEqual([`123 ${row}`])
    expect(
      linesOf(cells(',').replaceAll('.', '')).lines[0]!.marks.filter((mark) => mark === ''),
    ).toHaveLength(12)
    // 25 cells of which the first is no number are no numbered row, and neither are 26.
    expect(read(`x,${cells(',')}`)[0]).toMatch(/^- x,o,/)
    expect(read(`1234,${cells(',')}`)[0]).toMatch(/^- 1234,o,/)
    expect(read(`1,2,${cells(',')}`)[0]).toMatch(/^- 1,2,o/)
  })

  test('leave blank lines out, unless spaces are columns and the line is full of them', () => {
    expect(read(`\n${row}\n\n  \n\t\n${row}\n`)).toHaveLength(2)
    const spaced = `x${' '.repeat(22)}x`
    expect(linesOf(`${spaced}\n${' '.repeat(24)}\n${' '.repeat(23)}\n${' '.repeat(25)}`)).toMatchObject({
      lines: { length: 2 },
      areSpacesBlank: true,
    })
    expect(linesOf(`${spaced}\n${'\t'.repeat(24)}`).lines).toHaveLength(1)
  })

  test('take spaces for columns only where no other mark is for none', () => {
    expect(linesOf('x  x').areSpacesBlank).toBe(true)
    expect(linesOf('x  x.').areSpacesBlank).toBe(false)
    expect(linesOf('x  x0').areSpacesBlank).toBe(false)
    expect(linesOf('xx  ').areSpacesBlank).toBe(false)
    expect(linesOf('x'.repeat(24)).areSpacesBlank).toBe(false)
    expect(linesOf(cells(' ', 'x'.repeat(24))).areSpacesBlank).toBe(false)
    expect(linesOf('').lines).toEqual([])
  })

  test('with spaces for columns keep those at their ends, up to the last column', () => {
    expect(read(`x  x${' '.repeat(20)}`)).toEqual([`- x  x${' '.repeat(20)}`])
    expect(read(`x  x${' '.repeat(21)}`)).toEqual(['- x  x'])
    expect(read('\tx x')).toEqual(['-  x x'])
    expect(read(`x x\n${'x'.repeat(24)}`)).toEqual(['- x x', `- ${'x'.repeat(24)}`])
    expect(read(`x x\n${cells(' ', 'x'.repeat(24))}`)).toEqual(['- x x', `- ${'x'.repeat(24)}`])
  })
})

describe('marks', () => {
  const meanings = (used: string, asked = used): string => {
    const { meaning } = marksOf(new Set(Array.from(used)))
    return Array.from(asked, (mark) => meaning(mark).charAt(0)).join('')
  }

  test.each([
    ['oOxX#*1×✕●■⬤•⚫█▪', 'h'],
    ['.-_·– ', 'n'],
  ])('%s all mean the same', (marks, meaning) => {
    for (const mark of marks) {
      expect(meanings(mark)).toBe(meaning)
      expect(isMark(mark)).toBe(true)
    }
  })

  test.each(['0', '□', '○', '◯', '⚪', '▫'])(
    '“%s” is a hole where no other mark is, and some mark is none',
    (mark) => {
      expect(isMark(mark)).toBe(true)
      expect(meanings(`${mark}.`)).toBe('hn')
      expect(meanings(`${mark}.x`)).toBe('nnh')
      expect(meanings(mark)).toBe('n')
      expect(marksOf(new Set([mark, ''])).meaning(mark)).toBe('hole')
    },
  )

  test('mean nothing where they are none, and an empty cell is no hole', () => {
    expect(meanings('q?')).toBe('uu')
    expect(isMark('q')).toBe(false)
    expect(marksOf(new Set('x')).meaning('')).toBe('none')
    expect(marksOf(new Set('x')).meaning('xx')).toBe('unknown')
  })

  test('for none are seen where they are no space', () => {
    expect(['x x', 'x.x', 'x0', '', 'x'].map(hasVisibleBlank)).toEqual([false, true, true, false, false])
  })

  const remarks = (used: string): readonly string[] => marksOf(new Set(Array.from(used))).remarks
  test.each<[string, string[]]>([
    ['o.', []],
    ['0.', ['There is no other mark for a hole, so “0” is read as one.']],
    ['0□.', ['There is no other mark for a hole, so “0” and “□” are read as one.']],
    ['0o', ['“0” is read as no hole and “o” as a hole.']],
    ['0O', ['“0” is read as no hole and “O” as a hole.']],
    ['0oO', ['“0” is read as no hole and “o” as a hole.']],
    ['0x', []],
    ['0o.', []],
    ['xo', ['Every mark here means a hole: “x” and “o”. Write “.” where there is none.']],
    ['xo.', []],
    ['x', []],
    ['x0□', []],
    ['xo□', []],
  ])('of “%s” have this to be said: %j', (used, said) => {
    expect(remarks(used)).toEqual(said)
  })

  test.each([
    ['0o.', true],
    ['0O.', true],
    ['0o', false],
    ['0.', false],
    ['o.', false],
    ['0x.', false],
  ])('of “%s” may have a nought that is a slip: %s', (used, isDoubtful) => {
    expect(marksOf(new Set(Array.from(used))).isZeroDoubtful).toBe(isDoubtful)
  })
})
