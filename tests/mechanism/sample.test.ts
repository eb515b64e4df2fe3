import { describe, expect, test } from 'vitest'
import { toBed } from '@/mechanism/bed.ts'
import { sampleOf, sampleRows, windowOf, wrongNeedles } from '@/mechanism/sample.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { machine } from './make.ts'

const card = [0xa53c96, 0x1f07e8, 0x800001, 0x5b6d13, 0xffffff, 0, 0x74d80b, 0x000800]
const passes = (sample: ReturnType<typeof sampleOf>): number[] => sample.rows.map(({ pass }) => pass)
const wrongRows = (sample: ReturnType<typeof sampleOf>): number[] =>
  sample.rows.flatMap(({ pass, wrong }) => (wrong.length > 0 ? [pass] : []))

describe('a sample of fabric', () => {
  test('holds whole repeats of a short card, and some rows of a long one', () => {
    expect(sampleOf(machine(card), 1).rows).toHaveLength(16)
    expect(sampleOf(machine(card.slice(0, 1)), 1).rows).toHaveLength(sampleRows.least)
    expect(sampleOf(machine(null), 1).rows).toHaveLength(sampleRows.least)
    expect(sampleOf(machine(Array.from({ length: 60 }, () => 5)), 1).rows).toHaveLength(sampleRows.most)
  })

  test('ends with the row that the pass shown sets out, and begins after the plain first row', () => {
    expect(passes(sampleOf(machine(card), 1)).at(0)).toBe(2)
    expect(passes(sampleOf(machine(card), 40)).at(-1)).toBe(41)
  })

  test('goes where the fault is', () => {
    const long = Array.from({ length: 60 }, () => 0xa53c96)
    expect(wrongRows(sampleOf(machine(long, ['card.torn.50.2']), 1))).toEqual([51])
    const uneven = Array.from({ length: 60 }, (_, n) => 0xa53c96 ^ n)
    expect(wrongRows(sampleOf(machine(uneven, ['turn.short.900']), 1))[0]).toBe(901)
  })

  test('finds nothing wrong with a sound machine', () => {
    expect(wrongNeedles(sampleOf(machine(card), 9))).toEqual([])
  })

  test('names every needle of a seized strip', () => {
    const wrong = wrongNeedles(sampleOf(machine(card, ['strip.3.seized']), 1))
    expect(wrong).toHaveLength(25)
    expect(new Set(wrong.map((index) => index % 8)).size).toBe(1)
  })

  test('does not count needles out of use', () => {
    const bed = toBed({ first: 90, last: 109 })
    const wrong = wrongNeedles(sampleOf(machine(card, ['strip.3.seized'], { bed }), 1))
    expect(wrong.every((index) => index >= 90 && index <= 109)).toBe(true)
  })
})

describe('the window on a sample', () => {
  test('has a single wrong needle in its middle, as far as the bed goes', () => {
    expect(windowOf(sampleOf(machine(card, ['needle.R40.gone']), 1), 48)).toBe(139 - 24)
    expect(windowOf(sampleOf(machine(card, ['needle.L100.gone']), 1), 48)).toBe(0)
  })

  test('is in the middle of the bed where nothing is wrong, and begins at the first of few needles', () => {
    expect(windowOf(sampleOf(machine(card), 1), 48)).toBe(76)
    expect(
      windowOf(sampleOf(machine(card, [], { bed: { first: toNeedle(90), last: toNeedle(109) } }), 1), 48),
    ).toBe(90)
  })
})
