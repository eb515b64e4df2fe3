import { describe, expect, test } from 'vitest'
import {
  askedRow,
  floatLength,
  floatLimit,
  floats,
  hasKnitted,
  knittedRow,
  longestFloat,
  longFloats,
  type Stitch,
} from '@/mechanism/fabric.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { everyNeedle, machine, selectedIn } from './make.ts'
import { scattered } from './cards.ts'
import { columnAt, holeIn, rowWith, stripAt } from './trade.ts'

/** A row of fabric as one letter a stitch, and the other way round. */
const letters = { first: '-', second: 'o', none: ' ' } as const
const written = (row: readonly Stitch[]): string => row.map((stitch) => letters[stitch]).join('')
/** A row of the training machine's bed that begins so; its other needles knit nothing. */
const row = (text: string): Stitch[] =>
  [...text.padEnd(200)].map((letter) => (letter === 'o' ? 'second' : letter === '-' ? 'first' : 'none'))

describe('a pass knits what the pass before it set out', () => {
  test('so that the fabric is one row behind the card', () => {
    const run = machine(scattered)
    for (let pass = 2; pass <= 9; pass++) {
      const cardRow = scattered[(pass - 2) % scattered.length]!
      expect(written(knittedRow(run, pass))).toBe(
        everyNeedle.map((index) => (holeIn(cardRow, columnAt(index)) ? 'o' : '-')).join(''),
      )
    }
  })

  test.each([1, 0, -3])('and pass %i, with nothing set out before it, knits plain', (pass) => {
    expect(written(knittedRow(machine([0xffffff]), pass))).toBe('-'.repeat(200))
    expect(written(askedRow(machine([0xffffff]), pass))).toBe('-'.repeat(200))
  })

  test('and its second yarn lies where needles were selected, whatever is broken', () => {
    const run = machine(scattered, ['strip.3.seized', 'pin.5.high', 'pawl.left', 'belt.timing=8'])
    for (let pass = 2; pass <= 9; pass++)
      expect(knittedRow(run, pass).flatMap((stitch, index) => (stitch === 'second' ? [index] : []))).toEqual(
        selectedIn(run, pass - 1),
      )
  })
})

describe('the fabric beside the one the card asks for', () => {
  test('is the same on a sound machine', () => {
    const run = machine(scattered)
    for (let pass = 1; pass <= 9; pass++) expect(knittedRow(run, pass)).toEqual(askedRow(run, pass))
  })

  test('lacks the second yarn at every eighth needle where a strip is seized', () => {
    const run = machine([0xffffff], ['strip.3.seized'])
    expect(written(askedRow(run, 2))).toBe('o'.repeat(200))
    expect(written(knittedRow(run, 2))).toBe(
      everyNeedle.map((index) => (stripAt(index) === 3 ? '-' : 'o')).join(''),
    )
  })

  test('shows a row twice where the carriage turned short', () => {
    const run = machine(scattered, ['turn.short.3'])
    expect(knittedRow(run, 4)).toEqual(knittedRow(run, 3))
    expect(askedRow(run, 4)).not.toEqual(askedRow(run, 3))
  })

  test('has no stitch in any row where a needle has no butt, nor out of use', () => {
    const run = machine([0xffffff], ['needle.R3.gone'], { bed: { first: toNeedle(90), last: toNeedle(109) } })
    for (const pass of [1, 2, 5]) {
      const knitted = knittedRow(run, pass)
      expect(knitted.flatMap((stitch, index) => (stitch === 'none' ? [] : [index]))).toEqual(
        Array.from({ length: 20 }, (_, n) => 90 + n).filter((index) => index !== 102),
      )
      expect(askedRow(run, pass)[102]).not.toBe('none')
    }
  })
})

test('a needle has knitted once the cams ahead of the presser have it in line', () => {
  expect(hasKnitted(100, toNeedle(102), 1)).toBe(true)
  expect(hasKnitted(100, toNeedle(103), 1)).toBe(false)
  expect(hasKnitted(100, toNeedle(98), -1)).toBe(true)
  expect(hasKnitted(100, toNeedle(97), -1)).toBe(false)
})

describe('floats', () => {
  test('lie between two stitches of one yarn, behind all that is between', () => {
    expect(floats(row('--ooo-oo-'))).toEqual([
      { yarn: 'first', first: 2, last: 4 },
      { yarn: 'first', first: 6, last: 7 },
      { yarn: 'second', first: 5, last: 5 },
    ])
  })

  test('pass behind a missing stitch too', () => {
    expect(floats(row('o- -o'))).toEqual([
      { yarn: 'first', first: 2, last: 2 },
      { yarn: 'second', first: 1, last: 3 },
    ])
  })

  test.each(['------', 'oooooo', '--o---', '', '   '])('are none of the second yarn in “%s”', (text) => {
    expect(floats(row(text)).filter(({ yarn }) => yarn === 'second')).toEqual([])
  })

  test('count every stitch of the other yarn once where both ends are of one yarn', () => {
    const knitted = row('o--o-ooo----o')
    const behind = floats(knitted).filter(({ yarn }) => yarn === 'second')
    expect(behind.reduce((sum, float) => sum + floatLength(float), 0)).toBe(
      knitted.filter((stitch) => stitch === 'first').length,
    )
  })

  test(`are long when they pass behind more than ${floatLimit}`, () => {
    const at = (length: number): Stitch[] => row(`o${'-'.repeat(length)}o`)
    expect(longFloats(at(floatLimit))).toEqual([])
    expect(longFloats(at(floatLimit + 1))).toEqual([{ yarn: 'second', first: 1, last: floatLimit + 1 }])
  })

  test('the longest of several rows is found, and none where nothing floats', () => {
    expect(longestFloat([row('o-o'), row('-oooo-'), row('o--o')])).toEqual({
      yarn: 'first',
      first: 1,
      last: 4,
    })
    expect(longestFloat([row('----'), row('oooo')])).toBeNull()
    expect(longestFloat([])).toBeNull()
  })

  test('grow where a fault takes stitches away', () => {
    const card = [rowWith(3, 7, 11, 15, 19, 23)]
    const longest = (faults: string[]): number =>
      floatLength(longestFloat([knittedRow(machine(card, faults), 2)])!)
    expect(longest([])).toBe(3)
    expect(longest(['strip.3.seized'])).toBe(7)
  })
})
