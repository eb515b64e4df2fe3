import { describe, expect, test } from 'vitest'
import { choose, rowsForCodes, rowsForMixedCodes, rowsToSeparate } from '@/find/codes.ts'

/** Whether `columns` different codes of `rows` bits can be chosen so that every two of them fit: by trying them all. */
const canChoose = (rows: number, columns: number, fits: (one: number, other: number) => boolean): boolean => {
  const codes = Array.from({ length: 2 ** rows }, (_, code) => code)
  const grow = (chosen: number[], from: number): boolean =>
    chosen.length === columns ||
    codes
      .slice(from)
      .some((code) => chosen.every((one) => fits(one, code)) && grow([...chosen, code], code + 1))
  return grow([], 0)
}
const isApart = (one: number, other: number): boolean => (one & other) !== one && (one & other) !== other

describe('the fewest card rows that tell columns apart', () => {
  // Source: ⌈log₂ n⌉ yes-or-no answers tell n things apart (any text on information).
  test.each([
    [24, 5],
    [8, 3],
  ])('%d columns, each with a code of its own: %d', (columns, rows) => {
    expect(rowsForCodes(columns)).toBe(rows)
    expect(Math.ceil(Math.log2(columns))).toBe(rows)
  })

  // Source: the same, less the two codes that are all holes and all blank.
  test.each([
    [24, 5],
    [8, 4],
  ])('%d columns, none of them all holes or all blank: %d', (columns, rows) => {
    expect(rowsForMixedCodes(columns)).toBe(rows)
  })

  // Source: E. Sperner, Ein Satz über Untermengen einer endlichen Menge (1928); J. Spencer, Minimal completely
  // separating systems (1970); from memory.
  test.each([
    [24, 7],
    [8, 5],
  ])('%d columns, completely separated: %d', (columns, rows) => {
    expect(rowsToSeparate(columns)).toBe(rows)
    expect(choose(rows, Math.floor(rows / 2))).toBeGreaterThanOrEqual(columns)
    expect(choose(rows - 1, Math.floor((rows - 1) / 2))).toBeLessThan(columns)
  })

  test('is right for few columns by trying every choice of codes', () => {
    for (let columns = 2; columns <= 6; columns++) {
      const rows = rowsToSeparate(columns)
      expect(canChoose(rows, columns, isApart)).toBe(true)
      expect(canChoose(rows - 1, columns, isApart)).toBe(false)
      expect(canChoose(rowsForCodes(columns), columns, () => true)).toBe(true)
      expect(canChoose(rowsForCodes(columns) - 1, columns, () => true)).toBe(false)
    }
  })
})
