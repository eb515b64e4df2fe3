import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fullPush, sweepPast, sweepWindow, wrap } from '@/mechanism/sweep.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { check } from './check.ts'
import { count, everyNeedle, machine } from './make.ts'
import { columnAt } from './trade.ts'

describe('the sweep', () => {
  test('meets each column once in 24 needles of travel: over its pin at each needle of that column', () => {
    const { condition } = machine(null)
    for (const column of count(1, 24))
      expect(everyNeedle.filter((x) => sweepPast(condition, toColumn(column), x, 1) === 0)).toEqual(
        everyNeedle.filter((x) => columnAt(x) === column),
      )
  })

  test('is as far past a pin as the belt is out, with the slack halved and opposite each way', () => {
    const { condition } = machine(null, ['belt.timing=2.5', 'belt.slack=3'])
    expect(sweepPast(condition, toColumn(1), 100, 1)).toBeCloseTo(2.5 + 1.5, 12)
    expect(sweepPast(condition, toColumn(1), 100, -1)).toBeCloseTo(2.5 - 1.5, 12)
  })

  test('counts its distance from a pin within 12 needles, from the pin behind at just 12', () => {
    expect([-36, -12.5, -12, -11.5, 0, 11.5, 12, 12.5, 24, 36].map(wrap)).toEqual([
      12, 11.5, 12, -11.5, 0, 11.5, 12, -11.5, 0, 12,
    ])
    check(
      fc.property(fc.double({ min: -2000, max: 2000, noNaN: true }), (distance) => {
        const turns = (distance - wrap(distance)) / 24
        expect(turns).toBeCloseTo(Math.round(turns), 9)
        expect(Math.abs(wrap(distance))).toBeLessThanOrEqual(12)
      }),
    )
  })

  test('pushes as a raised cosine, fully at the pin’s middle, by half at 0.8 needles, not at all from 1.6', () => {
    expect(sweepWindow(0)).toBe(1)
    for (const side of [1, -1]) {
      expect(sweepWindow(side * 0.8)).toBeCloseTo(0.5, 12)
      expect(sweepWindow(side * 0.4)).toBeCloseTo((1 + Math.SQRT1_2) / 2, 12)
      expect(sweepWindow(side * 1.59)).toBeGreaterThan(0)
      expect(sweepWindow(side * 1.6)).toBe(0)
      expect(sweepWindow(side * 3.2)).toBe(0)
    }
  })

  test.each([
    [1.2, 0],
    [2.0, 0],
    [2.1, 0.5],
    [2.3, 1.5],
    [2.4, 2.0],
    [3.0, 2.0],
  ])('pushes a pin %d mm high by %d mm, in proportion to its bite up to 0.4 mm', (height, push) => {
    expect(fullPush(machine(null).condition, height)).toBeCloseTo(push, 12)
  })
})
