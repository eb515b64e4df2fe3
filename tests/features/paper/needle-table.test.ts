import { expect, test } from 'vitest'
import { needleTable } from '@/features/paper/needle-table.ts'
import { columnOfNeedle, needleIndex, needleName, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { allNeedles, needlesOfBed, toNeedle } from '@/mechanism/indices.ts'

test('the printed table has every needle once, with the column and the strip that the model gives it', () => {
  const lines = needleTable(usualPlace)
  expect(lines.flatMap(({ left, right }) => [...left, ...right]).sort()).toEqual(
    allNeedles.map(needleName).sort(),
  )
  for (const { column, strip, left, right } of lines)
    for (const name of [...left, ...right]) {
      const needle = needleIndex(name)!
      expect([columnOfNeedle(needle, usualPlace), stripOfNeedle(needle, usualPlace)], name).toEqual([
        column,
        strip,
      ])
    }
})

test('the table and the names of a bed of any length have its own needles, each once', () => {
  for (const needles of [60, 62, 160, 250]) {
    const names = needleTable(usualPlace, needles).flatMap(({ left, right }) => [...left, ...right])
    expect(names.toSorted()).toEqual(needlesOfBed(needles).map(needleName).toSorted())
    const first = needleTable(usualPlace, needles).flatMap(({ left }) => left)
    expect(first.every((name) => name.startsWith('L'))).toBe(true)
  }
})

test('on a bed whose column 1 is elsewhere all of it moves along', () => {
  const lines = needleTable({ columnOne: needleIndex('L12')! })
  expect(lines[0]!.left).toContain('L12')
  expect(lines[0]!.right).toEqual(['R13', 'R37', 'R61', 'R85'])
  expect(lines[23]!.left).toContain('L13')
  expect(needleTable({ columnOne: toNeedle(100 - 24) })).toEqual(needleTable(usualPlace))
})
