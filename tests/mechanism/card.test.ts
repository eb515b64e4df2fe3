import fc from 'fast-check'
import { expect, test } from 'vitest'
import { columnBit, everyHole, hasHole } from '@/mechanism/card.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { columns, rows } from './arbitraries.ts'
import { check } from './check.ts'
import { count } from './make.ts'
import { holeIn, rowWith } from './trade.ts'

const allColumns = count(1, 24)

test('column 1 is the highest bit of a row and column 24 the lowest', () => {
  expect(columnBit(toColumn(1))).toBe(8_388_608)
  expect(columnBit(toColumn(24))).toBe(1)
  expect(allColumns.map((column) => columnBit(toColumn(column)))).toEqual(
    allColumns.map((column) => rowWith(column)),
  )
})

test('the row of every hole has all 24', () => {
  expect(everyHole).toBe(rowWith(...allColumns))
})

test('a row has just the holes that its number spells', () => {
  check(
    fc.property(rows, columns, (row, column) => {
      expect(hasHole(row, toColumn(column))).toBe(holeIn(row, column))
    }),
  )
})
