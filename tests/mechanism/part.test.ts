import { describe, expect, test } from 'vitest'
import { needleName } from '@/mechanism/bed.ts'
import { allColumns, allNeedles, allStrips } from '@/mechanism/indices.ts'
import { parsePart, type PartId, partId, partOf } from '@/mechanism/part.ts'

const ids: PartId[] = [
  'card',
  'turn',
  'pawl',
  'pawl.right',
  'pawl.left',
  ...allColumns.flatMap((column): PartId[] => [`pin.${column}`, `rocker.${column}`]),
  'sweep',
  'belt',
  ...allStrips.map((strip): PartId => `strip.${strip}`),
  ...allNeedles.flatMap((needle): PartId[] => [
    `catch.${needleName(needle)}`,
    `needle.${needleName(needle)}`,
  ]),
  'presser',
  'presser.right',
  'presser.left',
  'retainer',
  'gate.1',
  'gate.2',
  'carriage',
]

describe('a part’s id', () => {
  test('is read and written back the same', () => {
    expect(ids.map((id) => partId(partOf(id)))).toEqual(ids)
  })

  test('says which part of its kind it is', () => {
    expect(parsePart('pin.7')).toEqual({ kind: 'pin', column: 7 })
    expect(parsePart('strip.3')).toEqual({ kind: 'strip', strip: 3 })
    expect(parsePart('catch.R3')).toEqual({ kind: 'catch', needle: 102 })
    expect(parsePart('presser.left')).toEqual({ kind: 'presser', side: 'left' })
    expect(parsePart('presser')).toEqual({ kind: 'presser', side: null })
    expect(parsePart('gate.1')).toEqual({ kind: 'gate', gate: 1 })
    expect(parsePart('card')).toEqual({ kind: 'card' })
  })

  test.each([
    '',
    '.',
    'wheel',
    'card.',
    'card.1',
    'pin',
    'pin.1e1',
    'pin.3.0',
    'pin.0',
    'pin.25',
    'pin.07',
    'pin.1.low',
    'strip.9',
    'catch.R126',
    'needle.3',
    'pawl.up',
    'presser.',
    'gate.3',
    'gate',
  ])('“%s” names no part', (text) => {
    expect(parsePart(text)).toBeNull()
  })

  test('that fits the pattern but names no part is refused', () => {
    expect(() => partOf('pin.25')).toThrow(new RangeError('there is no part “pin.25”'))
  })
})
