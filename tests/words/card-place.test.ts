import { expect, test } from 'vitest'
import { columnOfNeedle, needleIndex } from '@/mechanism/bed.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { cardPlaceWords } from '@/words/card-place.ts'

test.each([
  ['R1', 'L24, R1 and R25'],
  ['L12', 'L12, R13 and R37'],
  ['R100', 'L21, R4 and R28'],
])('with column 1 at %s the needles of column 1 in the middle are %s', (name, names) => {
  expect(cardPlaceWords(needleIndex(name)!)).toBe(
    `Column 1 is at ${name}, and at every twenty-fourth needle from there: ${names} among them.`,
  )
})

test('every needle that is named is of column 1', () => {
  for (const columnOne of allNeedles)
    for (const name of cardPlaceWords(columnOne).match(/[LR]\d+/g)!)
      expect(columnOfNeedle(needleIndex(name)!, { columnOne })).toBe(1)
})
