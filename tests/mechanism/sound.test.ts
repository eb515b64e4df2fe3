import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { frameAt } from '@/mechanism/frame.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { startRun } from '@/mechanism/pass.ts'
import { beds, cards, passes, speeds } from './arbitraries.ts'
import { check } from './check.ts'
import { count, everyNeedle, machine } from './make.ts'
import { columnAt, holeIn } from './trade.ts'

describe('a sound machine', () => {
  test('selects the needles under holes and no others, at any speed, in any pass, on any bed', () => {
    check(
      fc.property(cards, speeds, passes, beds, (card, speed, number, bed) => {
        const pass = startRun({ ...soundScenario(card), speed, bed }).passOf(number)
        const row = card[(number - 1) % card.length]!
        const due = everyNeedle.map((needle) =>
          needle < bed.first || needle > bed.last
            ? 'unmoved'
            : holeIn(row, columnAt(needle))
              ? 'selected'
              : 'plain',
        )
        expect(pass.came).toEqual(due)
        expect(pass.asked).toEqual(due)
        expect(pass.departures).toEqual([])
      }),
      300,
    )
  })

  test('holds just the needles it selects', () => {
    check(
      fc.property(cards, passes, (card, number) => {
        const { keptFor, came } = machine(card).passOf(number)
        expect([...keptFor]).toEqual(came.map((outcome) => (outcome === 'selected' ? Infinity : 0)))
      }),
    )
  })

  test('selects every needle without a card and none with a blank row', () => {
    for (const pass of [1, 2]) {
      expect(machine(null).passOf(pass).came).toEqual(everyNeedle.map(() => 'selected'))
      expect(machine([0]).passOf(pass).came).toEqual(everyNeedle.map(() => 'plain'))
    }
  })

  test('repeats its pins, rockers and strips every 24 needles of travel', () => {
    const wholePlaces = fc.integer({ min: 0, max: 4 * 175 }).map((quarters) => quarters / 4)
    check(
      fc.property(cards, speeds, passes, wholePlaces, (card, speed, number, x) => {
        const run = machine(card, [], { speed })
        const here = frameAt(run, number, x)
        const on = frameAt(run, number, x + 24)
        for (const part of ['pinHeights', 'pinLeans', 'rockerOuts', 'stripShifts'] as const)
          for (const [n, value] of here[part].entries()) expect(on[part][n]).toBeCloseTo(value, 9)
        expect(on.column).toBe(here.column)
      }),
    )
  })

  test('shifts each strip at 25 needles at once, of which one is under the presser', () => {
    // Column 11 works strip 3; R11 is at 110, with eleven full eights on its left and thirteen on its right.
    const run = machine([2 ** (24 - 11)])
    const frame = frameAt(run, 1, 110)
    expect([...frame.stripShifts].map((shift) => shift >= 1.2)).toEqual(
      count(1, 8).map((strip) => strip === 3),
    )
    expect(run.passOf(1).came.flatMap((came, i) => (came === 'selected' ? [i] : []))).toEqual(
      everyNeedle.filter((i) => (i - 110) % 24 === 0),
    )
  })
})

test('the same scenario gives the same pass, in whatever order the passes are asked for', () => {
  const worn = { wear: 0.8, seed: 7 }
  const faults = ['retainer.worn=12', 'pin.5.over', 'strip.2.slow']
  const one = machine([0xa53c96, 0x1f07e8], faults, worn)
  const other = machine([0xa53c96, 0x1f07e8], faults, worn)
  const forward = count(1, 5).map((pass) => one.passOf(pass).came)
  const backward = [5, 4, 3, 2, 1].map((pass) => other.passOf(pass).came).reverse()
  expect(backward).toEqual(forward)
  expect(one.passOf(2)).toBe(one.passOf(2))
})
