import { describe, expect, test } from 'vitest'
import { toBed } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { type Sample, sampleOf, windowOf, wrongNeedles } from '@/mechanism/sample.ts'
import { count, machine } from './make.ts'

/** A sample of one row or more in which these needles are wrong. */
const sample = (first: number, last: number, ...rows: readonly (readonly number[])[]): Sample => ({
  bed: { first: toNeedle(first), last: toNeedle(last) },
  rows: rows.map((wrong, n) => ({ pass: n + 2, knitted: [], asked: [], wrong: wrong.map(toNeedle) })),
})

const rowsOfCard = (rows: number): number[] =>
  Array.from({ length: rows }, (_, n) => (n * 0x123457) & 0xffffff)
const passesOf = (rows: number, pass: number, ...faults: string[]): number[] =>
  sampleOf(machine(rowsOfCard(rows), faults), pass).rows.map((row) => row.pass)

describe('the rows of a sample', () => {
  test.each([
    [1, 12],
    [2, 12],
    [5, 15],
    [7, 14],
    [11, 22],
    [12, 12],
    [13, 13],
    [24, 24],
    [25, 24],
  ])('of a card of %i rows are %i', (rows, length) => {
    expect(passesOf(rows, 1)).toHaveLength(length)
  })

  test('go up to the one that the pass sets out, or begin with the first that is not plain whatever the card', () => {
    expect(passesOf(12, 1)).toEqual(count(2, 13))
    expect(passesOf(12, 12)).toEqual(count(2, 13))
    expect(passesOf(12, 13)).toEqual(count(3, 14))
    expect(passesOf(12, 30)).toEqual(count(20, 31))
  })

  test('stay where something is wrong in them', () => {
    expect(passesOf(12, 30, 'strip.3.seized')).toEqual(count(20, 31))
  })

  test('else stand around the first row that is wrong', () => {
    // Row 40 of the card is set out by pass 40 and knitted by pass 41: twelve rows are before it, counting itself.
    expect(passesOf(60, 1, 'card.blocked.40.24')).toEqual(count(30, 53))
    expect(passesOf(60, 1, 'card.blocked.40.1')).toEqual(count(30, 53))
    expect(passesOf(60, 1, 'turn.short.500')).toEqual(count(490, 513))
    expect(passesOf(60, 1, 'turn.short.90')).toEqual(count(80, 103))
    expect(passesOf(60, 30, 'card.torn.3.1')).toEqual(count(2, 25))
  })

  test('look at every needle in use, the first and the last too', () => {
    const bed = toBed({ first: 90, last: 109 })
    const wrong = (id: string): number[] => wrongNeedles(sampleOf(machine([0xffffff], [id], { bed }), 1))
    expect([wrong('needle.L10.gone'), wrong('needle.R10.gone'), wrong('needle.R11.gone')]).toEqual([
      [90],
      [109],
      [],
    ])
  })

  test('leave a needle that is wrong in no row out', () => {
    expect(wrongNeedles(sample(0, 199, [30, 4], [], [100, 30]))).toEqual([4, 30, 100])
    expect(wrongNeedles(sample(0, 199, []))).toEqual([])
  })
})

describe('a window on a sample', () => {
  test('begins with the first needle in use where it takes them all', () => {
    expect(windowOf(sample(90, 109, [100]), 20)).toBe(90)
    expect(windowOf(sample(90, 109, [109]), 21)).toBe(90)
    expect(windowOf(sample(90, 110, [110]), 20)).toBe(91)
  })

  test.each([
    [[100], 5, 98],
    [[100], 4, 98],
    [[2], 5, 0],
    [[0], 5, 0],
    [[197], 5, 195],
    [[199], 5, 195],
    [[50, 52], 5, 49],
    [[50, 54], 5, 50],
    // The one beside two others is shown with them, the one far off is not.
    [[50, 52, 120], 5, 49],
    [[10, 120, 122, 124], 5, 120],
    // Of two as good, the one nearer to the middle of the bed.
    [[20, 90], 5, 88],
    [[20, 130], 5, 128],
    [[10, 15], 5, 13],
    [[184, 189], 5, 182],
  ])('with %j wrong, %i wide, begins at %i', (wrong, width, start) => {
    expect(windowOf(sample(0, 199, wrong), width)).toBe(start)
  })

  test('counts a needle once for each row in which it is wrong', () => {
    expect(windowOf(sample(0, 199, [20, 130, 132], [20], [20]), 5)).toBe(18)
  })

  test('where nothing is wrong is the middle of the needles in use', () => {
    expect(windowOf(sample(0, 199, []), 48)).toBe(76)
    expect(windowOf(sample(0, 99, []), 10)).toBe(45)
    expect(windowOf(sample(100, 199, []), 10)).toBe(145)
    // Of the two nearest to the middle, the left one.
    expect(windowOf(sample(0, 199, []), 5)).toBe(97)
  })
})
