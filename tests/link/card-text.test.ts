import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decodeCard, encodeCard, readCardFile, rowText } from '@/link/card-text.ts'
import { ownCards } from './arbitraries.ts'

const bytesOf = (rows: readonly number[]): Buffer =>
  Buffer.from(rows.flatMap((row) => [row >> 16, (row >> 8) & 255, row & 255]))

describe('a card in a link', () => {
  test('is the base64url text that Node writes of its rows as three bytes each', () => {
    fc.assert(
      fc.property(ownCards, (rows) => {
        expect(encodeCard(rows)).toBe(bytesOf(rows).toString('base64url'))
      }),
    )
  })

  test('is read as Node reads base64url', () => {
    fc.assert(
      fc.property(ownCards, (rows) => {
        const text = bytesOf(rows).toString('base64url')
        expect(decodeCard(text)).toEqual({ rows, remark: null })
      }),
    )
  })

  test.each([
    ['AAAA', '........................'],
    ['____', 'oooooooooooooooooooooooo'],
    ['gAAA', 'o.......................'],
    ['AAAB', '.......................o'],
    ['4AAA', 'ooo.....................'],
    ['ABCD', '...........o....o.....oo'],
  ])('%s has column 1 as its highest bit: %s', (text, holes) => {
    const { rows } = decodeCard(text)
    expect(rows?.map(rowText)).toEqual([holes])
  })

  test.each([
    ['', 'it has no whole row of 24 columns'],
    ['AAA', 'it has no whole row of 24 columns'],
    ['AAA+', '“+” has no place in a card'],
    ['AA/A', '“/” has no place in a card'],
    ['AAA=', '“=” has no place in a card'],
    ['🧶AAAA', '“🧶” has no place in a card'],
    ['AA\nA', '“·” has no place in a card'],
    ['AAAA\u2028', '“·” has no place in a card'],
  ])('%j is refused, as %s', (text, reason) => {
    expect(decodeCard(text)).toEqual({ rows: null, reason })
  })

  test('cut short keeps its whole rows and says so', () => {
    expect(decodeCard('____AAAAgA')).toEqual({
      rows: [0xffffff, 0],
      remark: 'row 3 is not 24 columns wide, so the 2 before it stand',
    })
  })

  test('of 200 rows is whole, and of more keeps the first 200 and says so', () => {
    expect(decodeCard('____'.repeat(200))).toMatchObject({ remark: null })
    for (const more of ['gAAA', 'gAAAgAAAgA', 'gA']) {
      const { rows, ...rest } = decodeCard('____'.repeat(200) + more)
      expect(rows).toEqual(new Array(200).fill(0xffffff))
      expect(rest).toEqual({ remark: 'it has more than 200 rows, so the first 200 stand' })
    }
  })
})

describe('a card file', () => {
  const head = 'title: Two rows\nabout: A trial.\n\n'
  const row = 'o......................o'
  const blank = '........................'

  test.each([
    ['with a line end at its end', `${head}${row}\n${blank}\n`],
    ['without one', `${head}${row}\n${blank}`],
    ['with the line ends of Windows', `${head}${row}\n${blank}\n`.replaceAll('\n', '\r\n')],
  ])('is read %s', (_, text) => {
    expect(readCardFile(text)).toEqual({ title: 'Two rows', about: 'A trial.', rows: [0x800001, 0] })
  })

  test.each([
    ['', 'line 1: expected “title: …”, found “”'],
    [`name: Two\nabout: A trial.\n\n${row}\n`, 'line 1: expected “title: …”, found “name: Two”'],
    [`title: Two\n\n\n${row}\n`, 'line 2: expected “about: …”, found “”'],
    [`title: \nabout: A trial.\n\n${row}\n`, 'line 1: expected “title: …”, found “title: ”'],
    [`title: Two\nabout: A trial.\n${row}\n${row}\n`, `line 3: expected an empty line, found “${row}”`],
    [`${head}${row.slice(1)}\n`, `line 4: expected 24 characters, each “o” or “.”, found “${row.slice(1)}”`],
    [`${head}${row}\n\n${row}\n`, 'line 5: expected 24 characters, each “o” or “.”, found “”'],
    [`${head}${row}\n\n\n`, 'line 5: expected 24 characters, each “o” or “.”, found “”'],
    [`${head}${row.replace('o', 'O')}`, /^line 4: expected 24 characters/],
    [head, 'expected 1 to 200 rows, found 0'],
    [`${head}${`${row}\n`.repeat(201)}`, 'expected 1 to 200 rows, found 201'],
  ])('that is not so is refused with the line at fault (case %#)', (text, message) => {
    expect(() => readCardFile(text)).toThrow(message)
  })
})
