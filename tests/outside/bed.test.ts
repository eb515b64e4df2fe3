import { describe, expect, test } from 'vitest'
import { columnOfNeedle, needleName, stripOfColumn, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { readFault } from '@/mechanism/read-fault.ts'
import { count, everyNeedle } from '../mechanism/make.ts'
import { toColumn, toNeedle } from '@/mechanism/indices.ts'

/** Source: common practice, no source. */
describe('a standard-gauge bed', () => {
  const { needles, pitch, columns, strips } = dimensions

  test('of 200 needles 4.5 mm apart is 895.5 mm from first to last', () => {
    expect(needles).toBe(200)
    expect(pitch).toBe(4.5)
    expect((everyNeedle.length - 1) * pitch).toBe(895.5)
    expect([needleName(toNeedle(0)), needleName(toNeedle(needles - 1))]).toEqual(['L100', 'R100'])
  })

  test('repeats its columns every 108 mm and its strips every 36 mm', () => {
    const next = (of: (index: number) => number): number =>
      count(1, 199).find((i) => of(i) === of(0))! * pitch
    expect(next((needle) => columnOfNeedle(toNeedle(needle), usualPlace))).toBe(108)
    expect(next((needle) => stripOfNeedle(toNeedle(needle), usualPlace))).toBe(36)
  })

  test('has 24 columns on 8 strips: columns k, k + 8 and k + 16 share strip k', () => {
    expect([columns, strips]).toEqual([24, 8])
    for (const k of count(1, 8))
      expect([k, k + 8, k + 16].map((column) => stripOfColumn(toColumn(column)))).toEqual([k, k, k])
  })

  test.each([
    ['columns', 'card.torn.1.', '', 24],
    ['pins', 'pin.', '.low', 24],
    ['rockers', 'rocker.', '.dead', 24],
    ['strips', 'strip.', '.seized', 8],
  ])('has %s that can break, %s1%s to %i, and no more', (_, before, after, last) => {
    const canBreak = (number: number): boolean => readFault(`${before}${number}${after}`).kind === 'fault'
    expect(count(0, 40).filter(canBreak)).toEqual(count(1, last))
  })

  test('has a catch at every eighth needle of each strip, which serves 25 of the 200 needles', () => {
    for (const k of count(1, 8)) {
      const served = everyNeedle.filter((i) => stripOfNeedle(i, usualPlace) === k)
      expect(served).toHaveLength(25)
      expect(new Set(served.slice(1).map((i, n) => i - served[n]!))).toEqual(new Set([8]))
    }
  })
})

/** Source: the Chinese remainder theorem, any text on number theory. */
test('Z₂₄ is Z₃ × Z₈: a column’s remainders by 3 and by 8 name it, and a strip is its remainder by 8', () => {
  const remainders = count(1, 24).map((column) => `${column % 3} ${column % 8}`)
  expect(new Set(remainders).size).toBe(24)
  for (const by3 of count(0, 2))
    for (const strip of count(1, 8)) {
      const named = count(1, 24).filter(
        (column) => column % 3 === by3 && stripOfColumn(toColumn(column)) === strip,
      )
      expect(named).toHaveLength(1)
      expect(named[0]! % 8).toBe(strip % 8)
    }
})
