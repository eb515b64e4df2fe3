import { describe, expect, test } from 'vitest'
import { readCarriagePosition, readBed, writeCarriagePosition, writeBed } from '@/link/carriage-position.ts'
import { toBed } from '@/mechanism/bed.ts'

describe('a place of the carriage', () => {
  test.each([
    ['L112', -12],
    ['L100', 0],
    ['L1', 99],
    ['R0.5', 99.5],
    ['R1', 100],
    ['R12.5', 111.5],
    ['R100', 199],
    ['R112', 211],
    ['R0.0001', 99.0001],
  ])('%s is x = %d, and is written so again', (text, x) => {
    expect(readCarriagePosition(text)).toBe(x)
    expect(writeCarriagePosition(x)).toBe(text)
  })

  test.each([
    ['L0.5', 99.5],
    ['L0.9999', 99.0001],
    ['R012', 111],
    ['R12.50', 111.5],
    ['R12.00004', 111],
    ['R1000', 1099],
    ['L12345678', 100 - 12345678],
  ])('%s is read as x = %d', (text, x) => {
    expect(readCarriagePosition(text)).toBe(x)
  })

  test.each([
    [99.00004, 'L1'],
    [99.00006, 'R0.0001'],
    [98.99996, 'L1'],
    [1 / 3, 'L99.6667'],
    [210.99999, 'R112'],
  ])('%d, between two ten-thousandths, is written as %s, which can be read', (x, text) => {
    expect(writeCarriagePosition(x)).toBe(text)
    expect(readCarriagePosition(text)).toBeCloseTo(x, 3)
  })

  test.each([
    '',
    'R',
    '12',
    'R-1',
    'r12',
    'R12.',
    'R.5',
    'R1e2',
    'L0',
    'R0',
    'R0.00001',
    ' R1',
    'R1 ',
    'R1\n',
    'M5',
  ])('%j is none', (text) => expect(readCarriagePosition(text)).toBeNull())
})

describe('the needles in use', () => {
  test.each([
    ['L100-R100', { first: 0, last: 199 }],
    ['L24-R24', { first: 76, last: 123 }],
    ['L1-R1', { first: 99, last: 100 }],
    ['R7-R7', { first: 106, last: 106 }],
    ['L9-L3', { first: 91, last: 97 }],
  ])('%s are read, and written so again', (text, bed) => {
    expect(readBed(text)).toEqual(bed)
    expect(writeBed(toBed(bed))).toBe(text)
  })

  test.each([
    '',
    '-',
    'L24',
    'L24-',
    '-R24',
    'R24-L24',
    'L101-R1',
    'L1-R101',
    'L100-R101',
    'L100-x',
    'L0-R1',
    'L1-R1-R2',
    'L1.5-R2',
    'l1-r1',
  ])('%j are none', (text) => expect(readBed(text)).toBeNull())
})
