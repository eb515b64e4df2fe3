import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { needlesOf, readRun, writeNeedles } from '@/link/needle-runs.ts'
import { needleIndex } from '@/mechanism/bed.ts'

const indexes = (names: string): number[] => names.split(' ').map((name) => needleIndex(name)!)

describe('needles written as runs', () => {
  test.each([
    ['R3', 'R3'],
    ['R3 R4', 'R3_R4'],
    ['R3 R4 R5', 'R3-R5'],
    ['L2 L1 R1 R2', 'L2-R2'],
    ['R3 R11', 'R3_R11'],
    ['R3 R11 R19', 'R3-R19x8'],
    ['R3 R27 R51', 'R3-R51x24'],
    ['L100 L76 L52', 'L100-L52x24'],
    ['R98 R99 R100', 'R98-R100'],
    ['R3 R4 R5 R9', 'R3-R5_R9'],
    ['R9 R5 R3 R4', 'R3-R5_R9'],
    // The longest run from a needle is taken, the closer one among equals.
    ['R3 R4 R5 R11 R19 R27', 'R3-R27x8_R4_R5'],
    ['R3 R4 R5 R11 R19', 'R3-R5_R11_R19'],
    ['R3 R4 R27 R51 R75', 'R3-R75x24_R4'],
    ['R3 R6 R9', 'R3_R6_R9'],
  ])('%s are %s', (names, text) => {
    expect(writeNeedles(indexes(names))).toBe(text)
  })

  test('are an empty text where there are none', () => {
    expect(writeNeedles([])).toBe('')
  })

  test('are read back, each once, whichever they are', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(199), { minLength: 1 }), (needles) => {
        const read = writeNeedles(needles)
          .split('_')
          .flatMap((text) => needlesOf(readRun(text)!))
        expect(read.sort((one, other) => one - other)).toEqual(needles.sort((one, other) => one - other))
      }),
    )
  })
})

describe('a run', () => {
  test.each([
    ['R3', { first: 102, last: 102, step: 1 }],
    ['R3-R3', { first: 102, last: 102, step: 1 }],
    ['R3-R9', { first: 102, last: 108, step: 1 }],
    ['L97-R96x8', { first: 3, last: 195, step: 8 }],
    ['L100-R100x999', { first: 0, last: 199, step: 999 }],
    ['R3-R9x1', { first: 102, last: 108, step: 1 }],
  ])('%s is read', (text, run) => {
    expect(readRun(text)).toEqual(run)
  })

  test.each([
    ...[
      '',
      'R',
      '3',
      'R0',
      'R101',
      'L1000',
      'r3',
      'M3',
      'R3-',
      'R3-9',
      'R3-R101',
      'L100-R101',
      'R101-R3',
      'R9-R3',
    ],
    ...['R3-R9x', 'R3-R9x0', 'R3-R9x1000', 'R3-R9x-8', 'R3x8', 'xR3', 'R3 ', 'R3-R9x8 ', 'R3-R9-R12'],
  ])('“%s” is none', (text) => {
    expect(readRun(text)).toBeNull()
  })

  test('holds its needles from the first in steps, and none after the last', () => {
    expect(needlesOf({ first: 3, last: 20, step: 8 })).toEqual([3, 11, 19])
    expect(needlesOf({ first: 3, last: 19, step: 8 })).toEqual([3, 11, 19])
    expect(needlesOf({ first: 3, last: 18, step: 8 })).toEqual([3, 11])
    expect(needlesOf({ first: 7, last: 7, step: 1 })).toEqual([7])
  })
})
