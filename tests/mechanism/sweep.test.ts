import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beltLead, fullPush, leadOf, sweepDistance, sweepWindow, wrap } from '@/mechanism/sweep.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { check } from './check.ts'
import { count, everyNeedle, machine } from './make.ts'
import { columnAt } from './trade.ts'

describe('the sweep', () => {
  const past = (faults: readonly string[], column: number, x: number, way: 1 | -1): number =>
    wrap(sweepDistance(machine(null, faults).condition, toColumn(column), x, way))

  test('meets each column once in 24 needles of travel: when its needle is halfway from the presser to the gate', () => {
    for (const way of [1, -1] as const)
      for (const column of count(1, 24))
        expect(everyNeedle.filter((i) => Math.abs(past([], column, i + way * 0.8, way)) < 1e-9)).toEqual(
          everyNeedle.filter((i) => columnAt(i) === column),
        )
    expect(leadOf(dimensions)).toBeCloseTo(1.6 / 2, 12)
  })

  test('is out as the belt is: a timing error to the same side both ways, slack late both ways', () => {
    const faults = ['belt.timing=2.5', 'belt.slack=3']
    expect(past(faults, 1, 100, 1)).toBeCloseTo(-0.8 + 2.5 - 1.5, 12)
    expect(past(faults, 1, 100, -1)).toBeCloseTo(0.8 + 2.5 + 1.5, 12)
    const { condition } = machine(null, ['belt.slack=3'])
    expect([beltLead(condition, 1), beltLead(condition, -1)]).toEqual([-1.5, -1.5])
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

  test('pushes as a wedge, fully along its flat, by half in the middle of a ramp, not at all from 2.1 needles', () => {
    expect(sweepWindow(dimensions, 0)).toBe(1)
    for (const side of [1, -1]) {
      expect(sweepWindow(dimensions, side * 1.2)).toBe(1)
      expect(sweepWindow(dimensions, side * 1.65)).toBeCloseTo(0.5, 12)
      expect(sweepWindow(dimensions, side * 1.425)).toBeCloseTo((1 + Math.SQRT1_2) / 2, 12)
      expect(sweepWindow(dimensions, side * 2.09)).toBeGreaterThan(0)
      expect(sweepWindow(dimensions, side * 2.1)).toBe(0)
      expect(sweepWindow(dimensions, side * 3.2)).toBe(0)
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
