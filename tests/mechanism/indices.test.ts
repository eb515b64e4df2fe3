import { describe, expect, test } from 'vitest'
import { needleName, stripOfColumn } from '@/mechanism/bed.ts'
import {
  allColumns,
  allNeedles,
  allStrips,
  isNeedle,
  needleAtSlot,
  needlesBetween,
  needlesOfBed,
  ofColumn,
  ofNeedle,
  ofRow,
  ofStrip,
  rowsOf,
  slotOf,
  toCardRow,
  toColumn,
  toNeedle,
  toStrip,
} from '@/mechanism/indices.ts'
import { at, entry, lastOf } from '@/mechanism/lookup.ts'

describe('an index', () => {
  test.each([
    ['needle', toNeedle, -25, 224],
    ['column', toColumn, 1, 24],
    ['strip', toStrip, 1, 8],
    ['row', (value: number) => toCardRow(value, 60), 1, 60],
  ])(
    'of a %s is a whole number within its range, and anything else is refused',
    (name, make, least, most) => {
      expect([make(least), make(most)]).toEqual([least, most])
      for (const wrong of [least - 1, most + 1, least + 0.5, NaN, Infinity])
        expect(() => make(wrong)).toThrow(
          new RangeError(`there is no ${name} ${wrong}; they run from ${least} to ${most}`),
        )
    },
  )

  test('is in its list once', () => {
    expect(allNeedles).toEqual(Array.from({ length: 200 }, (_, n) => n))
    expect(allColumns).toEqual(Array.from({ length: 24 }, (_, n) => n + 1))
    expect(allStrips).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    expect(rowsOf(3)).toEqual([1, 2, 3])
    expect(needlesBetween(toNeedle(3), toNeedle(5))).toEqual([3, 4, 5])
  })

  test('finds its own entry of a list', () => {
    expect(allNeedles.map((needle) => ofNeedle(allNeedles, needle))).toEqual(allNeedles)
    expect(allColumns.map((column) => ofColumn(allColumns, column))).toEqual(allColumns)
    expect(allStrips.map((strip) => ofStrip(allStrips, strip))).toEqual(allStrips)
    expect(rowsOf(3).map((row) => ofRow([7, 8, 9], row))).toEqual([7, 8, 9])
    expect(() => ofColumn([], toColumn(1))).toThrow(RangeError)
  })

  test('of a needle has its place in the list of a bed of any length, R1 right of the middle', () => {
    for (const length of [60, 62, 160, 200, 250]) {
      const all = needlesOfBed(length)
      expect(all).toHaveLength(length)
      expect([needleName(at(all, 0)), needleName(lastOf(all))]).toEqual([`L${length / 2}`, `R${length / 2}`])
      expect(slotOf(toNeedle(100), length)).toBe(length / 2)
      expect(all.map((needle) => ofNeedle(all, needle))).toEqual(all)
      expect(all.map((_, slot) => needleAtSlot(slot, length))).toEqual(all)
      const beyond = needleAtSlot(0, length) - 1
      expect([isNeedle(beyond, length), isNeedle(beyond + 1, length)]).toEqual([false, true])
      if (isNeedle(beyond)) expect(() => ofNeedle(all, beyond)).toThrow(RangeError)
    }
  })

  test('outside a table of the bed is refused', () => {
    for (const wrong of [0, 25, 1.5]) expect(() => stripOfColumn(toColumn(wrong))).toThrow(RangeError)
  })
})

describe('a look-up', () => {
  test('gives what is there, be it nought or false', () => {
    expect(at([0, 5], 0)).toBe(0)
    expect(at(new Float64Array([1.5]), 0)).toBe(1.5)
    expect(lastOf([1, 2, 3])).toBe(3)
    expect(entry(new Map([['a', false]]), 'a')).toBe(false)
  })

  test('throws a RangeError where nothing is there', () => {
    for (const index of [-1, 2, 0.5, NaN]) expect(() => at([1, 2], index)).toThrow(RangeError)
    expect(() => lastOf([])).toThrow(RangeError)
    expect(() => entry(new Map([['a', 1]]), 'b')).toThrow(
      new RangeError('there is no entry “b” in a map of 1'),
    )
  })
})
