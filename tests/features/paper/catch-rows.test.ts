import { expect, test } from 'vitest'
import { catchRows } from '@/features/paper/catch-rows.ts'
import { needleIndex, needleName } from '@/mechanism/bed.ts'
import { needlesOfBed } from '@/mechanism/indices.ts'
import { count, machine, selectedIn } from '../../mechanism/make.ts'

test.each(['R1', 'R13', 'L3'])(
  'with column 1 at %s the sheet for catches has a box under each strip for every needle that stays down when that strip is over',
  (name) => {
    const columnOne = needleIndex(name)!
    const rows = catchRows({ columnOne })
    expect(rows).toHaveLength(25)
    for (const strip of count(1, 8))
      expect(rows.map((names) => needleIndex(names[strip - 1]!))).toEqual(
        selectedIn(machine([0], [`strip.${strip}.over`], { columnOne }), 1),
      )
  },
)

test.each([60, 62, 160, 250])(
  'a bed of %d needles has a box for each of its needles, and no other',
  (needles) => {
    const rows = catchRows({ columnOne: needleIndex('R1')! }, needles)
    const names = rows.flat().filter((name) => name !== null)
    expect(names.toSorted()).toEqual(needlesOfBed(needles).map(needleName).toSorted())
  },
)
