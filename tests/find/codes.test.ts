import { expect, test } from 'vitest'
import { rowsForCodes, rowsForFaults, rowsForMixedCodes, rowsToSeparate } from '@/find/codes.ts'

test.each([
  ['codes of their own', rowsForCodes, [1, 2, 3, 4, 5, 24], [0, 1, 2, 2, 3, 5]],
  ['codes of holes and blanks both', rowsForMixedCodes, [1, 2, 3, 6, 7, 14, 24], [2, 2, 3, 3, 4, 4, 5]],
  ['codes none within another', rowsToSeparate, [1, 2, 3, 4, 6, 7, 10, 11, 24], [0, 2, 3, 4, 4, 5, 5, 6, 7]],
  ['what parts faults', rowsForFaults, [1, 3, 4, 6, 7], [3, 3, 4, 4, 5]],
] as const)('the fewest rows for %s', (_, rowsFor, columns, rows) => {
  expect(columns.map(rowsFor)).toEqual(rows)
})
