import { describe, expect, test } from 'vitest'
import {
  columnOfNeedle,
  modulo,
  needleIndex,
  needleName,
  passEnds,
  stripOfColumn,
  stripOfNeedle,
  usualPlace,
  wayOfPass,
} from '@/mechanism/bed.ts'
import { toColumn, toNeedle } from '@/mechanism/indices.ts'
import { count, everyNeedle } from './make.ts'
import { columnAt, stripAt } from './trade.ts'

const numberOf = (name: string): number => needleIndex(name) ?? Number.NaN

describe('numbering', () => {
  test.each([
    ['R1', 100, 1, 1],
    ['R8', 107, 8, 8],
    ['R9', 108, 9, 1],
    ['R24', 123, 24, 8],
    ['R25', 124, 1, 1],
    ['L1', 99, 24, 8],
    ['L24', 76, 1, 1],
    ['L25', 75, 24, 8],
    ['L100', 0, 21, 5],
    ['R100', 199, 4, 4],
  ])('%s is index %i, column %i, strip %i', (name, index, column, strip) => {
    expect(numberOf(name)).toBe(index)
    expect(needleName(toNeedle(index))).toBe(name)
    expect(columnOfNeedle(toNeedle(index), usualPlace)).toBe(column)
    expect(stripOfNeedle(toNeedle(index), usualPlace)).toBe(strip)
  })

  test('columns and strips follow one another as one counts along the bed', () => {
    expect(everyNeedle.map((needle) => columnOfNeedle(needle, usualPlace))).toEqual(
      everyNeedle.map((needle) => columnAt(needle)),
    )
    expect(everyNeedle.map((needle) => stripOfNeedle(needle, usualPlace))).toEqual(
      everyNeedle.map((needle) => stripAt(needle)),
    )
  })

  test('columns 1 to 24 work strips 1 to 8 three times over', () => {
    expect(count(1, 24).map((column) => stripOfColumn(toColumn(column)))).toEqual([
      ...count(1, 8),
      ...count(1, 8),
      ...count(1, 8),
    ])
  })

  test('each needle has a name of its own, which leads back to it', () => {
    const names = everyNeedle.map((needle) => needleName(needle))
    expect(new Set(names).size).toBe(200)
    expect(names.map((name) => needleIndex(name))).toEqual(everyNeedle)
  })

  test.each([
    '',
    'L',
    'L0',
    'R0',
    'L101',
    'R101',
    'R01',
    'r1',
    ' R1',
    'R1 ',
    'R1.5',
    'R1e1',
    '7',
    'RR1',
    'R999',
  ])('there is no needle “%s”', (name) => {
    expect(needleIndex(name)).toBeNull()
  })
})

describe('passes', () => {
  test('odd passes go to the right and even ones to the left', () => {
    expect(count(1, 6).map(wayOfPass)).toEqual([1, -1, 1, -1, 1, -1])
  })

  test('a pass runs from 12 needles outside the needles in use to 12 needles outside them', () => {
    expect(passEnds(1, { first: toNeedle(0), last: toNeedle(199) })).toEqual({ start: -12, end: 211 })
    expect(passEnds(2, { first: toNeedle(0), last: toNeedle(199) })).toEqual({ start: 211, end: -12 })
    expect(passEnds(3, { first: toNeedle(90), last: toNeedle(109) })).toEqual({ start: 78, end: 121 })
    expect(passEnds(4, { first: toNeedle(100), last: toNeedle(100) })).toEqual({ start: 112, end: 88 })
  })
})

test('a remainder is never negative', () => {
  expect([-25, -24, -1, 0, 23, 24].map((value) => modulo(value, 24))).toEqual([23, 0, 23, 0, 23, 0])
})
