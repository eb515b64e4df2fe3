import fc from 'fast-check'
import { expect, test } from 'vitest'
import { columnBit, everyHole, hasHole, mirrorRow, noHole } from '@/mechanism/card.ts'
import { columns, rows } from './arbitraries.ts'
import { check } from './check.ts'
import { count } from './make.ts'
import { holeIn, rowWith } from './trade.ts'

const allColumns = count(1, 24)

test('column 1 is the highest bit of a row and column 24 the lowest', () => {
  expect(columnBit(1)).toBe(8_388_608)
  expect(columnBit(24)).toBe(1)
  expect(allColumns.map(columnBit)).toEqual(allColumns.map((column) => rowWith(column)))
})

test('the row of every hole has all 24 and the row without has none', () => {
  expect(everyHole).toBe(rowWith(...allColumns))
  expect(noHole).toBe(rowWith())
})

test('a row has just the holes that its number spells', () => {
  check(
    fc.property(rows, columns, (row, column) => {
      expect(hasHole(row, column)).toBe(holeIn(row, column))
    }),
  )
})

test('a row turned face about has hole c where hole 25 - c was, and turned twice is itself', () => {
  check(
    fc.property(rows, (row) => {
      const mirrored = mirrorRow(row)
      expect(allColumns.map((column) => holeIn(mirrored, column))).toEqual(
        allColumns.map((column) => holeIn(row, 25 - column)),
      )
      expect(mirrorRow(mirrored)).toBe(row)
    }),
  )
})
