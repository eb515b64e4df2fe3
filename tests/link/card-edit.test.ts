import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  addRow,
  type CardEdit,
  emptyCard,
  mirrorCard,
  removeRows,
  repeatRows,
  shiftColumns,
  shiftRows,
  turnCard,
  withHole,
} from '@/link/card-edit.ts'
import { rowText } from '@/link/card-text.ts'
import { type Card, hasHole, mostRows } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { ownCards } from './arbitraries.ts'

const changed = (edit: CardEdit): Card => {
  if (!edit.rows) throw new Error(edit.reason)
  return edit.rows
}
const row = 0b110000000000000000000001
const full = new Array<number>(mostRows).fill(row)
const anyCard = (check: (card: Card) => void): void => {
  fc.assert(fc.property(ownCards, check))
}
const placed = ownCards.chain((card) =>
  fc.tuple(
    fc.constant(card),
    fc.integer({ min: 1, max: card.length }),
    fc.integer({ min: 1, max: card.length }),
  ),
)

describe('one hole', () => {
  test('is punched and filled where it is said, and nowhere else', () => {
    fc.assert(
      fc.property(placed, fc.integer({ min: 1, max: 24 }), fc.boolean(), ([card, r], column, isHole) => {
        const after = changed(withHole(card, r, column, isHole))
        for (let n = 1; n <= card.length; n++)
          for (let c = 1; c <= 24; c++)
            expect(hasHole(after[n - 1]!, toColumn(c))).toBe(
              n === r && c === column ? isHole : hasHole(card[n - 1]!, toColumn(c)),
            )
      }),
      { numRuns: 30 },
    )
  })

  test('punched and filled again leaves an empty place', () => {
    expect(withHole(changed(withHole([0, 0], 2, 24, true)), 2, toColumn(24), false)).toEqual({
      rows: [0, 0],
    })
  })

  test.each([
    [0, 1, 'There is no row 0: this card has rows 1 to 2.'],
    [3, 1, 'There is no row 3: this card has rows 1 to 2.'],
    [1, 0, 'There is no column 0: a card has columns 1 to 24.'],
    [1, 25, 'There is no column 25: a card has columns 1 to 24.'],
    [1.5, 1, 'There is no row 1.5: this card has rows 1 to 2.'],
  ])('in row %d, column %d is refused', (r, column, reason) => {
    expect(withHole([0, 0], r, column, true)).toEqual({ rows: null, reason })
  })
})

describe('rows', () => {
  test('are added empty after a row, or before the first', () => {
    expect(addRow([1, 2], 0)).toEqual({ rows: [0, 1, 2] })
    expect(addRow([1, 2], 1)).toEqual({ rows: [1, 0, 2] })
    expect(addRow([1, 2], 2)).toEqual({ rows: [1, 2, 0] })
    expect(addRow([1, 2], 3)).toMatchObject({ reason: 'There is no row 3: this card has rows 1 to 2.' })
    expect(addRow([1], 2)).toMatchObject({ reason: 'There is no row 2: this card has 1 row.' })
    expect(addRow(full, 5)).toMatchObject({
      reason: 'That would make 201 rows. A card has at most 200 rows here.',
    })
  })

  test('are removed, but never all of them', () => {
    expect(removeRows([1, 2, 3, 4], 2, 3)).toEqual({ rows: [1, 4] })
    expect(removeRows([1, 2, 3, 4], 4, 4)).toEqual({ rows: [1, 2, 3] })
    expect(removeRows([1, 2], 1, 2)).toMatchObject({
      reason: 'A card has at least 1 row, so one of them must stay.',
    })
    expect(removeRows([1], 1, 1)).toMatchObject({
      reason: 'A card has at least 1 row, so the last one must stay.',
    })
    expect(removeRows([1, 2], 2, 1)).toMatchObject({
      reason: 'Row 2 comes after row 1. Name the lower row first.',
    })
    expect(removeRows([1, 2], 1, 7)).toMatchObject({
      reason: expect.stringMatching(/^There is no row 7/) as string,
    })
    expect(removeRows([1, 2], NaN, 2)).toMatchObject({
      reason: expect.stringMatching(/^There is no row NaN/) as string,
    })
  })

  test('are repeated one after the other, so many times in all', () => {
    expect(repeatRows([1, 2, 3, 4], 2, 3, 3)).toEqual({ rows: [1, 2, 3, 2, 3, 2, 3, 4] })
    expect(repeatRows([1], 1, 1, 200)).toMatchObject({ rows: { length: 200 } })
    expect(repeatRows([1], 1, 1, 201)).toMatchObject({
      reason: expect.stringMatching(/^That would make 201 rows/) as string,
    })
    expect(repeatRows([1], 1, 1, 1e9)).toMatchObject({ rows: null })
    for (const times of [1, 0, -2, 2.5, NaN])
      expect(repeatRows([1], 1, 1, times)).toMatchObject({
        reason: 'To repeat rows, have them at least 2 times in all.',
      })
  })

  test('added and removed again give the card back', () => {
    fc.assert(
      fc.property(placed, ([card, r]) => {
        if (card.length < mostRows)
          expect(removeRows(changed(addRow(card, r)), r + 1, r + 1).rows).toEqual(card)
      }),
    )
  })

  test('repeated twice and the copy removed give the card back', () => {
    fc.assert(
      fc.property(placed, ([card, a, b]) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)]
        const twice = repeatRows(card, from, to, 2)
        if (card.length + to - from + 1 > mostRows) expect(twice.rows).toBeNull()
        else expect(removeRows(changed(twice), to + 1, to + 1 + to - from).rows).toEqual(card)
      }),
    )
  })

  test('of an empty card are 1 to 200', () => {
    expect(emptyCard(3)).toEqual({ rows: [0, 0, 0] })
    expect(emptyCard(200)).toMatchObject({ rows: { length: 200 } })
    for (const none of [0, -1, 1.5, NaN])
      expect(emptyCard(none)).toMatchObject({ reason: 'A card has at least 1 row.' })
    expect(emptyCard(201)).toMatchObject({ rows: null })
  })
})

describe('a whole card', () => {
  test('mirrored has its first column last', () => {
    expect(mirrorCard([row]).map(rowText)).toEqual(['o.....................oo'])
    anyCard((card) => {
      expect(mirrorCard(card).map(rowText)).toEqual(
        card.map((holes) => Array.from(rowText(holes)).reverse().join('')),
      )
    })
  })

  test('mirrored twice or turned twice is the same', () => {
    anyCard((card) => {
      expect(mirrorCard(mirrorCard(card))).toEqual(card)
      expect(turnCard(turnCard(card))).toEqual(card)
    })
  })

  test('turned has its last row first', () => {
    expect(turnCard([1, 2, 3])).toEqual([3, 2, 1])
  })

  test('shifted right comes in at the left, and the other way round', () => {
    expect(shiftColumns([row], 1).map(rowText)).toEqual(['ooo.....................'])
    expect(shiftColumns([row], -1).map(rowText)).toEqual(['o.....................oo'])
  })

  test('shifted by all its columns or rows is the same, and shifts add up', () => {
    const by = fc.integer({ min: -60, max: 60 })
    fc.assert(
      fc.property(ownCards, by, by, (card, a, b) => {
        expect(shiftColumns(card, 24)).toEqual(card)
        expect(shiftRows(card, card.length)).toEqual(card)
        expect(shiftColumns(shiftColumns(card, a), b)).toEqual(shiftColumns(card, a + b))
        expect(shiftRows(shiftRows(card, a), b)).toEqual(shiftRows(card, a + b))
        expect(shiftColumns(mirrorCard(card), a)).toEqual(mirrorCard(shiftColumns(card, -a)))
        expect(shiftRows(turnCard(card), a)).toEqual(turnCard(shiftRows(card, -a)))
      }),
    )
  })

  test('shifted up has its last row before its first', () => {
    expect(shiftRows([1, 2, 3], 1)).toEqual([3, 1, 2])
    expect(shiftRows([1, 2, 3], -1)).toEqual([2, 3, 1])
    expect(shiftRows([7], 5)).toEqual([7])
  })
})
