import { describe, expect, test } from 'vitest'
import { readNeedleList } from '@/link/needle-list.ts'
import { needleName } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'

const names = (text: string): string =>
  readNeedleList(text)
    .needles.map((needle) => needleName(toNeedle(needle)))
    .join(' ')
const troubles = (text: string): readonly string[] => readNeedleList(text).troubles

describe('needles as people type them', () => {
  test.each([
    ['R3', 'R3'],
    ['  r3  ', 'R3'],
    ['L1, R1', 'L1 R1'],
    ['R9;R3', 'R3 R9'],
    ['R3.R4.', 'R3 R4'],
    ['R3\n\tR4', 'R3 R4'],
    ['R3 , ; . R4', 'R3 R4'],
    ['R3-R5', 'R3 R4 R5'],
    ['R3 - R5', 'R3 R4 R5'],
    ['R3–R5', 'R3 R4 R5'],
    ['R3 — R5', 'R3 R4 R5'],
    ['R3−R5', 'R3 R4 R5'],
    ['r3 to r5', 'R3 R4 R5'],
    ['R5-R3', 'R3 R4 R5'],
    ['L2-R1', 'L2 L1 R1'],
    ['R7-R7', 'R7'],
    ['R 3, L  12', 'L12 R3'],
    ['R 3 to R 5 R 9', 'R3 R4 R5 R9'],
    ['L100-L98 R100', 'L100 L99 L98 R100'],
    ['', ''],
    [' ,.; ', ''],
  ])('%j are %s', (text, read) => {
    expect(names(text)).toBe(read)
    expect(troubles(text)).toEqual([])
  })
})

describe('what is no needle', () => {
  test.each([
    ['R101', '“R101” is'],
    ['11', '“11” is'],
    ['R3-', '“R3-” is'],
    ['-R3', '“-R3” is'],
    ['R3-R5-R7', '“R3-R5-R7” is'],
    ['R3-R300', '“R3-R300” is'],
    ['R300-R3', '“R300-R3” is'],
    ['R3TOR5', '“R3TOR5” is'],
    ['XR 3', '“XR”, “3” are'],
    ['a b', '“A”, “B” are'],
    ['a b c', '“A”, “B”, “C” are'],
    ['a b c d', '“A”, “B”, “C” and 1 more are'],
    ['a b c d e', '“A”, “B”, “C” and 2 more are'],
  ])('%s is named', (text, said) => {
    expect(readNeedleList(text)).toEqual({
      needles: [],
      troubles: [`${said} no needle here: they run from L100 to R100.`],
    })
  })

  test('leaves the needles beside it alone', () => {
    expect(names('R3 what R4')).toBe('R3 R4')
  })
})

describe('needles named twice', () => {
  test.each([
    ['R3 R3', 'R3', 'R3'],
    ['R3 R3 R3', 'R3', 'R3'],
    ['R3-R5 R4-R9', 'R3 R4 R5 R6 R7 R8 R9', 'R4, R5'],
    ['R1-R4 R1-R4', 'R1 R2 R3 R4', 'R1, R2, R3 and 1 more'],
  ])('%s count once and are said', (text, read, said) => {
    expect(names(text)).toBe(read)
    expect(troubles(text)).toEqual([`You named ${said} more than once.`])
  })

  test('are said after what is no needle', () => {
    expect(troubles('R3 what R3')).toEqual([
      '“WHAT” is no needle here: they run from L100 to R100.',
      'You named R3 more than once.',
    ])
  })
})
