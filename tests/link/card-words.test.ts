import { describe, expect, test } from 'vitest'
import { writeCardFile } from '@/link/card-file.ts'
import { pasteCard } from '@/link/card-paste.ts'
import { readCardFile, rowText } from '@/link/card-text.ts'

const row = 'o..oo..oo..oo..oo..oo..o'
const digits = (text: string): string => Array.from(text, (mark) => (mark === 'o' ? '1' : '0')).join(' ')
const rowsOf = (text: string): string[] => pasteCard(text).rows.map(rowText)
const problemsOf = (text: string): readonly string[] => pasteCard(text).problems

describe('a line that is a row', () => {
  test('is not taken for one with a number in front, though it begins with digits', () => {
    const turned = `.${row.slice(1)}`
    expect(rowsOf(`${digits(row)}\n${digits(turned)}`)).toEqual([row, turned])
    expect(rowsOf(`${digits(turned)}\n${digits(row)}`)).toEqual([turned, row])
  })

  test('is none by its length alone', () => {
    const two = (first: string, second: string) =>
      problemsOf(`${first} ${'o.'.repeat(11)}\n${second} ${'.o'.repeat(11)}`)
    expect(two('12', '13')).toEqual([
      'Row 1 is left out: it ends at column 22 instead of 24.',
      'Row 2 is left out: it ends at column 22 instead of 24.',
    ])
  })
})

describe('a number in front of a row', () => {
  test.each([
    'row 12: ',
    'Row3:',
    'row  3: ',
    '1) ',
    ' 7] ',
    '1. ',
    '12:',
    '1 : ',
    '200 ',
    'row3 ',
    'row  4  ',
    '3   ',
  ])('is no part of it: “%s”', (number) => {
    expect(pasteCard(`${number}${row}`)).toEqual({ rows: [0x999999], title: null, problems: [], remarks: [] })
  })

  test.each([
    ['oo.1: o.', 'in column 5 it has “:”'],
    ['x1: ooo', 'in column 3 it has “:”'],
    ['12abc: ooo', 'in column 2 it has “2”'],
    [`x7 ${row}`, 'in column 2 it has “7”'],
    [`${row.slice(0, 23)} 7 ${row.slice(23)}`, 'in column 24 it has “7”'],
    ['7 ooo', 'in column 1 it has “7”'],
  ])('is none elsewhere, and none alone: “%s”, %s', (text, trouble) => {
    expect(problemsOf(text)).toEqual([`Row 1 is left out: ${trouble}, which means neither a hole nor none.`])
  })

  test.each(['1 ooo.\n2 ooo.', '1 ooo.\n\n2 ooo.', '1 ooo.\n   \n2 ooo.', '2 ooo.\n1 ooo.'])(
    'is known by counting on, whatever follows it: “%s”',
    (text) => {
      expect(problemsOf(text)).toEqual([
        'Row 1 is left out: it ends at column 4 instead of 24.',
        'Row 2 is left out: it ends at column 4 instead of 24.',
      ])
    },
  )

  test('is known beside lines that a spreadsheet wrote', () => {
    expect(problemsOf(`1 ooo.\n2 ooo.\n${Array.from(row).join(',')}`)).toEqual([
      'Row 1 is left out: it ends at column 4 instead of 24.',
      'Row 2 is left out: it ends at column 4 instead of 24.',
    ])
  })

  test('is none where only some lines have one', () => {
    expect(problemsOf('oo.\n1 ooo.')).toEqual([
      'Row 1 is left out: it ends at column 3 instead of 24.',
      'Row 2 is left out: it ends at column 5 instead of 24.',
    ])
  })
})

describe('a line of a spreadsheet', () => {
  const cells = Array.from(row)
  test.each([
    ['blanks round its cells', cells.join(' , ')],
    ['cells in quotation marks', cells.map((cell) => `"${cell}"`).join(';')],
    ['a number in front', `12;${cells.join(';')}`],
    ['a number of three digits', `120\t${cells.join('\t')}`],
  ])('may have %s', (_, text) => {
    expect(rowsOf(text)).toEqual([row])
  })

  test.each(['x1', '1x'])('has a first cell too many where “%s” is no number', (first) => {
    expect(rowsOf(`${first};${cells.join(';')}`)).toEqual([])
  })

  test('names a cell that means nothing, without its quotation marks', () => {
    expect(problemsOf(['"ab"', ...cells.slice(1)].join(','))).toEqual([
      'Row 1 is left out: in column 1 it has “ab”, which means neither a hole nor none.',
    ])
  })

  test('with empty cells has none there', () => {
    expect(rowsOf(cells.map((cell) => (cell === 'o' ? '0' : '')).join(','))).toEqual([row])
  })
})

describe('a text in which spaces are columns', () => {
  const spaced = 'o oo'.padEnd(24)
  const said = 'o.oo'.padEnd(24, '.')

  test('may have spaces after its last column, and loses none before its first', () => {
    expect(pasteCard(`${spaced}\n${spaced}  `)).toEqual({
      rows: [0xb00000, 0xb00000],
      title: null,
      problems: [],
      remarks: ['Row 2 ends at column 4; after it there is no hole.'],
    })
    expect(rowsOf('  oo')).toEqual(['..oo'.padEnd(24, '.')])
    expect(rowsOf(` o o${' '.repeat(24)}`)).toEqual(['.o.o'.padEnd(24, '.')])
  })

  test('may have lost those at its end, which is said', () => {
    expect(pasteCard('o oo').remarks).toEqual(['Row 1 ends at column 4; after it there is no hole.'])
    expect(rowsOf('o oo')).toEqual([said])
  })

  test('may have a row without a hole, where a line is full of spaces; shorter and longer ones are none', () => {
    const blank = ' '.repeat(24)
    expect(rowsOf(`${blank}\n${spaced}`)).toEqual(['.'.repeat(24), said])
    expect(rowsOf(`${spaced}\n${blank}\n${spaced}`)).toEqual([said, '.'.repeat(24), said])
    expect(rowsOf(`${spaced}\n${' '.repeat(23)}\n${' '.repeat(25)}\n${spaced}`)).toEqual([said, said])
  })

  test('may have spaces that do not break, and numbers with any distance', () => {
    expect(rowsOf('o\u00A0oo')).toEqual([said])
    expect(rowsOf('1   o oo\n2   o oo')).toEqual([said, said])
  })

  test.each(['ooo', 'ooo  ', 'o o o .'])('is none: “%s”', (text) => {
    expect(problemsOf(text)).toEqual([
      `Row 1 is left out: it ends at column ${text.includes('.') ? 4 : 3} instead of 24.`,
    ])
  })
})

describe('a link in place of a card', () => {
  test('may have blanks round it', () => {
    expect(pasteCard('  x.mZmZ\n').rows).toEqual([0x999999])
  })

  test.each([
    ['card=harbour-star', 'This link names the card “harbour-star” and carries no rows of its own.'],
    ['http://a.example/', 'This link names no card and carries no rows of its own.'],
    ['https://a.example/#pass=3', 'This link names no card and carries no rows of its own.'],
  ])('without rows is said to have none: %s', (text, problem) => {
    expect(problemsOf(text)).toEqual([problem])
  })

  test.each(['ox.mZmZ', 'x.mZmZ o', 'see https://a.example/', 'https://a.example/ too'])(
    'is none where something else is on its line: “%s”',
    (text) => {
      expect(problemsOf(text)[0]).toMatch(/^Row 1 is left out: in column \d/)
    },
  )
})

describe('the head of a pasted card', () => {
  test.each([
    `title: Waves\nabout: Low ones.\n\n${row}`,
    `\n  \ntitle: Waves\n   \nABOUT : Low ones.\n\n${row}\n`,
    `about:\nTitle  :Waves  \n${row}`,
  ])('gives the title, and no row: “%s”', (text) => {
    expect(pasteCard(text)).toEqual({ rows: [0x999999], title: 'Waves', problems: [], remarks: [] })
  })

  test('may be all there is', () => {
    expect(pasteCard('title: Waves')).toEqual({ rows: [], title: 'Waves', problems: [], remarks: [] })
  })

  test.each(['my title: Waves', 'mytitle: Waves', 'titles: Waves'])('is none: “%s”', (line) => {
    const { title, problems } = pasteCard(`${line}\n${row}`)
    expect([title, problems.length]).toEqual([null, 1])
  })
})

describe('a long text', () => {
  test('is read up to its hundred thousandth character, and said to be cut after it', () => {
    const whole = row.padEnd(100_000, '\n')
    expect(pasteCard(whole)).toMatchObject({ rows: [0x999999], problems: [] })
    expect(pasteCard(`${whole}\n${row}`)).toMatchObject({
      rows: [0x999999],
      problems: ['The text is longer than 100000 characters and is cut there.'],
    })
  })

  test('of nothing but blanks is nothing', () => {
    expect(pasteCard(' \n\u00A0\n\t')).toEqual({ rows: [], title: null, problems: [], remarks: [] })
  })
})

test('a card without a hole has nothing to be said of its marks', () => {
  expect(pasteCard('.'.repeat(24))).toEqual({ rows: [0], title: null, problems: [], remarks: [] })
})

test('a doubtful 0 is named in the first column too', () => {
  expect(pasteCard(`0o.${row.slice(3)}`).remarks).toEqual([
    'Row 1, column 1: “0” is read as no hole. Write “o” for one.',
  ])
})

describe('a card’s own file', () => {
  test('always has a title and a line about it', () => {
    const text = writeCardFile({ title: '', about: ' ', rows: [0x999999] })
    expect(text).toBe(`title: Own card\nabout: A card of its own.\n\n${row}\n`)
  })

  test.each([
    ['title: a', 'line 2: expected “about: …”, found “”'],
    [`title: a\nabout: b\n\n.${row}\n`, `line 4: expected 24 characters, each “o” or “.”, found “.${row}”`],
    [`title: a\nabout: b\n\n${row}x\n`, `line 4: expected 24 characters, each “o” or “.”, found “${row}x”`],
  ])('names the line where it is not so: “%s”', (text, error) => {
    expect(() => readCardFile(text)).toThrow(error)
  })

  test('leaves out blanks round its title', () => {
    expect(readCardFile(`title:   Waves  \nabout: b\n\n${row}\n`).title).toBe('Waves')
  })
})
