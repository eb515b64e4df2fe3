import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { writeCardFile } from '@/link/card-file.ts'
import { pasteCard } from '@/link/card-paste.ts'
import { encodeCard, readCardFile, rowText } from '@/link/card-text.ts'
import { library } from './library.ts'
import { ownCards } from './arbitraries.ts'
import { write } from '@/link/write.ts'
import { defaultState } from '@/link/read.ts'

const one = 'o..oo..oo..oo..oo..oo..o'
const two = '.oo..oo..oo..oo..oo..oo.'
const both = `${one}\n${two}`
const read = (text: string): string[] => pasteCard(text).rows.map(rowText)
/** The same rows in other marks. */
const inMarks = (text: string, hole: string, none: string): string =>
  text.replaceAll('.', '\u0000').replaceAll('o', hole).replaceAll('\u0000', none)

describe('a pasted card', () => {
  test('is read row by row, its first line as row 1, with nothing to say', () => {
    expect(pasteCard(both)).toEqual({ rows: [0x999999, 0x666666], title: null, problems: [], remarks: [] })
  })

  test.each([
    ['o', '.'],
    ['O', '-'],
    ['x', '.'],
    ['X', '_'],
    ['X', '0'],
    ['#', '·'],
    ['*', '.'],
    ['1', '0'],
    ['1', '.'],
    ['●', '○'],
    ['■', '□'],
    ['⬤', '.'],
    ['⬤\uFE0F', '.'],
    ['⬛', '⬜'],
    ['⬛\uFE0F', '⬜\uFE0F'],
    ['◼\uFE0E', '◻\uFE0E'],
    ['◾', '◽'],
    ['▪\uFE0F', '▫\uFE0F'],
    ['⬛', '▢'],
    ['█', '_'],
    ['x', ' '],
    ['#', ' '],
    ['1', ' '],
    ['o', '0'],
    ['x', '–'],
  ])('may have %s for a hole and %s for none', (hole, none) => {
    const reading = pasteCard(inMarks(both, hole, none))
    expect(reading.rows.map(rowText)).toEqual([one, two])
    expect(reading.problems).toEqual([])
  })

  test.each([
    ['with the line ends of Windows', both.replaceAll('\n', '\r\n')],
    ['with the line ends of old computers', both.replaceAll('\n', '\r')],
    ['with a byte order mark', `\uFEFF${both}`],
    ['between empty lines', `\n\n${one}\n  \n\t\n${two}\n\n`],
    ['with blanks at the ends', `  ${one}   \n\t${two}\t`],
    ['in groups of eight', `${one} \n${two}`.replace(/(.{8})(.{8})/g, '$1 $2 ')],
    ['with a blank after each mark', both.replace(/([o.])/g, '$1 ')],
    ['in a frame', `|${one}|\n|${two}|`],
    ['with row numbers', `1: ${one}\n2: ${two}`],
    ['with row numbers without a blank', `1:${one}\n2:${two}`],
    ['with row numbers in brackets', `1) ${one}\n2) ${two}`],
    ['with row numbers and points', `1. ${one}\n2. ${two}`],
    ['with row numbers and blanks', `1 ${one}\n2 ${two}`],
    ['with row numbers and tabs', `11\t${one}\n12\t${two}`],
    ['with row numbers in words', `Row 1: ${one}\nrow 2: ${two}`],
    ['from a spreadsheet', both.replace(/([o.])(?!\n|$)/g, '$1\t')],
    ['from a spreadsheet with empty cells', both.replace(/([o.])(?!\n|$)/g, '$1\t').replaceAll('.', '')],
    ['with commas', both.replace(/([o.])(?!\n|$)/g, '$1,')],
    ['with commas and row numbers', `1,${both.replace(/([o.])(?!\n|$)/g, '$1,').replace('\n', '\n2,')}`],
    ['with semicolons and quotation marks', both.replace(/([o.])/g, '"$1";').replace(/;(\n|$)/g, '$1')],
  ])('is read %s', (_, text) => {
    expect(read(text)).toEqual([one, two])
    expect(pasteCard(text)).toMatchObject({ problems: [], remarks: [] })
  })

  test('numbered upwards has its last line as row 1, and that is said', () => {
    expect(pasteCard(`8: ${two}\n7: ${one}`)).toEqual({
      rows: [0x999999, 0x666666],
      title: null,
      problems: [],
      remarks: ['The rows are numbered upwards, so the last line is row 1.'],
    })
  })

  test('of ones and points keeps a first column that looks like a number', () => {
    const text = inMarks('o.o.o.o.o.o.o.o.o.o.o.o.', '1', '.')
    expect(read(text)).toEqual(['o.o.o.o.o.o.o.o.o.o.o.o.'])
    expect(read('1 0 '.repeat(12))).toEqual(['o.o.o.o.o.o.o.o.o.o.o.o.'])
  })

  test('with blanks for no hole is filled up at the right, and that is said', () => {
    const reading = pasteCard(`x  x\n${'x'.repeat(24)}\n   x`)
    expect(reading.rows.map(rowText)).toEqual([
      'o..o....................',
      'o'.repeat(24),
      '...o....................',
    ])
    expect(reading.remarks).toEqual([
      'Row 1 ends at column 4; after it there is no hole.',
      'Row 3 ends at column 4; after it there is no hole.',
    ])
  })

  test('with blanks for no hole may have a row of 24 blanks', () => {
    expect(read(`x${' '.repeat(22)}x\n${' '.repeat(24)}\nx${' '.repeat(22)}x\n   `)).toHaveLength(3)
  })
})

describe('doubtful marks', () => {
  test('are holes where a text has no other: noughts typed for the letter', () => {
    expect(pasteCard(inMarks(both, '0', '.'))).toEqual({
      rows: [0x999999, 0x666666],
      title: null,
      problems: [],
      remarks: ['There is no other mark for a hole, so “0” is read as one.'],
    })
    expect(read(inMarks(both, '○', '.'))).toEqual([one, two])
    expect(read(inMarks(both, '□', '-'))).toEqual([one, two])
  })

  test('alone are a row without a hole', () => {
    expect(read('0'.repeat(24))).toEqual(['.'.repeat(24)])
    expect(pasteCard('0'.repeat(24)).remarks).toEqual([])
  })

  test('that may be a slip are named with their row and column', () => {
    const reading = pasteCard(`${one}\n..0${two.slice(3)}`)
    expect(reading.rows.map(rowText)).toEqual([one, `...${two.slice(3)}`])
    expect(reading.remarks).toEqual(['Row 2, column 3: “0” is read as no hole. Write “o” for one.'])
  })

  test('of which one must be for no hole are said', () => {
    expect(pasteCard(inMarks(one, 'O', '0')).remarks).toEqual(['“0” is read as no hole and “O” as a hole.'])
    expect(pasteCard(inMarks(one, 'x', 'o')).remarks).toEqual([
      'Every mark here means a hole: “x” and “o”. Write “.” where there is none.',
    ])
  })
})

describe('what can’t be read', () => {
  test.each([
    [
      `${one}\nooo.oq..oo..oo..oo..oo..\n${two}`,
      'Row 2 is left out: in column 6 it has “q”, which means neither a hole nor none.',
    ],
    [`${one}\n${one.slice(1)}\n${two}`, 'Row 2 is left out: it ends at column 23 instead of 24.'],
    [`${one}\n${one}..\n${two}`, 'Row 2 is left out: it goes on after column 24, to column 26.'],
    [
      `${one}\n<b>hello</b>\n${two}`,
      'Row 2 is left out: in column 1 it has “<”, which means neither a hole nor none.',
    ],
    [
      `${one}\n${'o,.,'.repeat(11)}o,no\n${two}`,
      'Row 2 is left out: in column 24 it has “no”, which means neither a hole nor none.',
    ],
  ])('is named with its row and column, and the other rows are kept (case %#)', (text, problem) => {
    const reading = pasteCard(text)
    expect(reading.rows.map(rowText)).toEqual([one, two])
    expect(reading.problems).toEqual([problem])
  })

  test('is everything after 200 rows', () => {
    expect(pasteCard(`${one}\n`.repeat(200))).toMatchObject({ rows: { length: 200 }, problems: [] })
    expect(pasteCard(`${one}\n`.repeat(212))).toMatchObject({
      rows: { length: 200 },
      problems: ['The text has 212 rows; the first 200 are read.'],
    })
  })

  test('is everything after very many characters', () => {
    const { rows, problems } = pasteCard(`${one}\n${'q'.repeat(300_000)}`)
    expect(rows).toHaveLength(1)
    expect(problems.at(-1)).toBe('The text is longer than 100000 characters and is cut there.')
  })

  test('is nothing in an empty text', () => {
    for (const text of ['', ' \n\t\r\n', '\uFEFF'])
      expect(pasteCard(text)).toEqual({ rows: [], title: null, problems: [], remarks: [] })
  })

  test('never stops the reading, whatever the text', () => {
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 400 }),
      fc.string({
        unit: fc.constantFrom(...Array.from('oOxX#*10.-_ \t\n,;|:qx.card=title')),
        maxLength: 400,
      }),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const { rows, problems, remarks } = pasteCard(text)
        expect(rows.every((row) => Number.isInteger(row) && row >= 0 && row <= 0xffffff)).toBe(true)
        for (const sentence of [...problems, ...remarks]) expect(sentence).toMatch(/^[A-Z“].*\.$/)
      }),
    )
  })
})

describe('our own forms', () => {
  test('the card file gives the card back, with its title', () => {
    fc.assert(
      fc.property(ownCards, fc.string({ unit: 'binary', maxLength: 120 }), (rows, title) => {
        const text = writeCardFile({ title, about: 'A trial.', rows })
        expect(readCardFile(text).rows).toEqual(rows)
        const reading = pasteCard(text)
        expect(reading).toMatchObject({ rows, title: readCardFile(text).title, problems: [], remarks: [] })
      }),
    )
  })

  test('the card file is never without a title', () => {
    expect(readCardFile(writeCardFile({ title: ' ', about: '\n', rows: [0] }))).toMatchObject({
      title: 'Own card',
      about: '·',
    })
  })

  test('a link and what a link has for the card give the card back', () => {
    fc.assert(
      fc.property(ownCards, (rows) => {
        const state = { ...defaultState(library), card: { kind: 'own' as const, rows }, pass: 3 }
        const url = `https://example.org/workbench/?beside=card#${write(state, library)}`
        for (const text of [url, `See ${url}`, `card=x.${encodeCard(rows)}`])
          expect(pasteCard(text)).toMatchObject({ rows, problems: [] })
      }),
    )
    expect(read('x.____AAAA')).toEqual(['o'.repeat(24), '.'.repeat(24)])
  })

  test.each([
    ['card=x.____A', 'The link’s card was cut: row 2 is not 24 columns wide, so the 1 before it stand.'],
    ['card=x.', 'The link’s card can’t be read: it has no whole row of 24 columns.'],
    [
      'https://example.org/#card=fern&pass=2',
      'This link names the card “fern” and carries no rows of its own.',
    ],
    ['https://example.org/', 'This link names no card and carries no rows of its own.'],
  ])('%s says what is wrong', (text, problem) => {
    expect(pasteCard(text).problems).toEqual([problem])
  })

  test('a row that begins like a link’s card is a row', () => {
    expect(read('x.xxxxxxxxxxxxxxxxxxxxxx')).toEqual(['o.oooooooooooooooooooooo'])
    expect(read('x.x.x.x.x.x.x.x.x.x.x.x.')).toEqual(['o.o.o.o.o.o.o.o.o.o.o.o.'])
  })
})
