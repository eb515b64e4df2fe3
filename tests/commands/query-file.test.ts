import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { readQuery } from '@/commands/query-file.ts'
import { viewsOfQuery } from '@/find/query.ts'

const library = cardLibrary(cardsFolder)
const needles = 's'.repeat(200)

type Look = Partial<Record<'row' | 'way' | 'speed' | 'card' | 'pass', unknown>>

const queryOf = (card: string, looks: readonly Look[]) =>
  readQuery(
    JSON.stringify({
      card,
      passes: looks.map((look) => ({ row: 1, way: 'right', speed: 500, needles, ...look })),
    }),
    library,
  )

const passesOf = (card: string, looks: readonly Look[]) =>
  viewsOfQuery(queryOf(card, looks)).map(({ pass, shift }) => [pass, shift])

/** Cards of two and of three rows. */
const even = 'x.____AAAA'
const odd = 'x.____AAAA____'

describe('which pass a look is', () => {
  test('is its row where it does not say, again and again', () => {
    const looks = [{}, { row: 2, way: 'left' }, { speed: 900 }, { row: 2, way: 'left' }]
    expect(passesOf(even, looks)).toEqual([
      [1, 0],
      [2, 0],
      [1, 0],
      [2, 0],
    ])
  })

  test('is a whole card later where the card has an odd number of rows and the way does not fit', () => {
    expect(passesOf(odd, [{ way: 'left' }, { row: 2 }, { row: 3 }])).toEqual([
      [4, 0],
      [5, 0],
      [3, 0],
    ])
  })

  test('is a pass of the card laid in one row on where the way can’t fit', () => {
    expect(passesOf(even, [{ row: 2 }])).toEqual([[1, 1]])
  })

  test('is what it says, the card laid in as its row asks', () => {
    expect(
      passesOf(even, [{ pass: 3 }, { pass: 9999 }, { row: 2, way: 'left', pass: 4 }, { row: 2, pass: 1 }]),
    ).toEqual([
      [3, 0],
      [9999, 0],
      [4, 0],
      [1, 1],
    ])
  })
})

describe('the needle of column 1', () => {
  const withFirst = (first: unknown) =>
    readQuery(
      JSON.stringify(
        { card: even, first, passes: [{ row: 1, way: 'right', speed: 500, needles }] },
        undefined,
        1,
      ),
      library,
    )

  test('may be said beside the card, by any needle of column 1; else it is R1', () => {
    expect(withFirst('R13').columnOne).toBe(112)
    expect(withFirst('L12').columnOne).toBe(112)
    expect(queryOf(even, [{}]).columnOne).toBe(100)
    expect(viewsOfQuery(withFirst('R13')).map(({ columnOne }) => columnOne)).toEqual([112])
  })

  test.each([
    ['R126', 'Line 3: “first” has “R126”, which is no needle such as R1 or L12.'],
    ['', 'Line 3: “first” has “”, which is no needle such as R1 or L12.'],
    [7, "Line 3: “first” should be a needle's name, but is 7."],
    [null, "Line 3: “first” should be a needle's name, but is null."],
    [['R1'], "Line 3: “first” should be a needle's name, but is a list."],
  ])('that is no needle is refused with its line: %j', (first, said) => {
    expect(() => withFirst(first)).toThrow(said)
  })
})

describe('the card of a look', () => {
  test('is the file’s, or its own', () => {
    const { card, passes } = queryOf('blank', [
      {},
      { card: even, row: 2, way: 'left' },
      { card: 'none', row: null },
    ])
    const file = library.cards.get('blank')!
    expect(card).toEqual(file)
    expect(passes.map((pass) => pass.card)).toEqual([file, [0xffffff, 0], null])
  })

  test('may be its own where the file has none', () => {
    const { card, passes } = queryOf('none', [{ card: even }, { row: null }])
    expect(card).toBeNull()
    expect(passes.map((pass) => pass.card)).toEqual([[0xffffff, 0], null])
  })
})
