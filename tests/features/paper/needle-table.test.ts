import { expect, test } from 'vitest'
import { needleTable } from '@/features/paper/needle-table.ts'
import { columnOfNeedle, needleIndex, needleName, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { allNeedles, toNeedle } from '@/mechanism/indices.ts'

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

test('on a bed whose column 1 is elsewhere all of it moves along', () => {
  const lines = needleTable({ columnOne: needleIndex('L12')! })
  expect(lines[0]!.left).toContain('L12')
  expect(lines[0]!.right).toEqual(['R13', 'R37', 'R61', 'R85'])
  expect(lines[23]!.left).toContain('L13')
  expect(needleTable({ columnOne: toNeedle(100 - 24) })).toEqual(needleTable(usualPlace))
})
