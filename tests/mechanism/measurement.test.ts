import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dimensions } from '@/mechanism/dimensions.ts'
import { marginSlopes } from '@/mechanism/margin-slopes.ts'
import { margins } from '@/mechanism/margins.ts'
import { measuredMargins, measuredRun, selectionBounds } from '@/mechanism/measured-machine.ts'
import {
  type Measured,
  type MeasurementName,
  measurementNames,
  measurements,
  measuredSlopes,
  ownOf,
  stackUp,
  usualOf,
  wrongOrders,
} from '@/mechanism/measurement.ts'
import { dimensionsOf } from '@/mechanism/own.ts'
import { normalDraw } from '@/mechanism/random.ts'
import { fullShift } from '@/mechanism/rocker.ts'
import { speeds, ways } from './arbitraries.ts'
import { check } from './check.ts'
import { count } from './make.ts'

const usual: Measured = Object.fromEntries(measurementNames.map((name) => [name, usualOf(name)]))

/** What was measured of a machine that works more or less, or leaves a value out. */
const measuredSets: fc.Arbitrary<Measured> = fc
  .record(
    Object.fromEntries(
      measurementNames.map((name) => [
        name,
        fc.double({ min: 0.85, max: 1.15, noNaN: true }).map((share) => {
          const { least, most } = measurements[name]
          if (name === 'needles') return 2 * Math.round((share * usualOf(name)) / 2)
          const value =
            name === 'slack' ? share - 0.85 : name === 'timing' ? share - 1 : share * usualOf(name)
          return Math.min(most, Math.max(least, value))
        }),
      ]),
    ) as Record<MeasurementName, fc.Arbitrary<number>>,
    { requiredKeys: [] },
  )
  .filter((measured) => wrongOrders(measured).length === 0)

describe('what was measured', () => {
  test('of the training machine gives the training machine back', () => {
    for (const [name, value] of Object.entries(dimensionsOf(ownOf(usual))))
      expect(value).toBeCloseTo(dimensions[name as keyof typeof dimensions], 9)
    expect(ownOf({})).toEqual({})
    expect(ownOf({ slack: 3, timing: -1 })).toEqual({})
  })

  test('gives back each value that was put in, by the machine that it makes', () => {
    check(
      fc.property(measuredSets, (measured) => {
        const own = ownOf(measured)
        for (const name of measurementNames)
          if (name !== 'slack' && name !== 'timing')
            expect(usualOf(name, own)).toBeCloseTo(measured[name] ?? usualOf(name, own), 9)
        if (measured.shift !== undefined) expect(fullShift(dimensionsOf(own))).toBeCloseTo(measured.shift, 9)
      }),
    )
  })

  test('cannot be the wrong way round', () => {
    expect(wrongOrders({ pinLow: 3.1 })).toEqual([['pinLow', 'pinHigh']])
    expect(wrongOrders({ shift: 2.1 })).toEqual([['shift', 'sweepThrow']])
    expect(wrongOrders({ gate1: 0.9, gate2: 0.9 })).toEqual([['gate1', 'gate2']])
    expect(wrongOrders(usual)).toEqual([])
  })

  test('makes a strip’s time constant of its time home, its shift and its throw', () => {
    const time = (measured: Measured): number => dimensionsOf(ownOf(measured)).stripReturn
    for (const measured of [
      { home: 12 },
      { home: 12, sweepThrow: 1.9 },
      { home: 9, shift: 1.7 },
      { home: 9, shift: 1.7, sweepThrow: 2.1 },
    ] satisfies Measured[]) {
      const slopes = measuredSlopes({ stripReturn: 1 }, measured)
      for (const [name, value] of Object.entries(measured) as [MeasurementName, number][]) {
        const [less, more] = [-1e-5, 1e-5].map((by) => time({ ...measured, [name]: value + by }))
        expect(slopes[name] ?? 0).toBeCloseTo((more! - less!) / 2e-5, 6)
      }
    }
    expect(measuredSlopes({ stripReturn: 1 }, { shift: 1.7 })).not.toHaveProperty('home')
  })

  test('has slopes of its own: what a value changes in a margin, a little less and a little more', () => {
    let compared = 0
    check(
      fc.property(measuredSets, speeds, ways, (measured, speed, way) => {
        const run = measuredRun({ measured, speed })
        const slopes = marginSlopes(run, way)
        const mm = (set: Measured): number[] =>
          margins(measuredRun({ measured: set, speed }), way).map((each) => each.mm)
        for (const name of measurementNames) {
          const value = measured[name]
          if (value === undefined || Math.abs(value) < 1e-3 || name === 'needles') continue
          const step = 1e-5 * Math.abs(value)
          const [less, here, more] = [-step, 0, step].map((by) => mm({ ...measured, [name]: value + by }))
          for (const [n, { id }] of margins(run, way).entries()) {
            const [before, after] = [(here![n]! - less![n]!) / step, (more![n]! - here![n]!) / step]
            // At a corner the two sides differ, and the slope is that of one of them.
            if (Math.abs(before - after) > 2e-3 * (1 + Math.abs(before))) continue
            expect(measuredSlopes(slopes[id], measured)[name] ?? 0).toBeCloseTo((before + after) / 2, 2)
            compared++
          }
        }
      }),
      60,
      30,
    )
    expect(compared).toBeGreaterThan(1000)
  })
})

describe('how far a margin may be out', () => {
  test('adds up as in published examples of tolerance stack-ups', () => {
    const { likely, worst } = stackUp([0.005, 0.003, 0.002, 0.005])
    expect(likely).toBeCloseTo(0.00794, 5)
    expect(worst).toBeCloseTo(0.015, 12)
    const ten = stackUp(count(1, 10).map(() => 0.1))
    expect(ten.likely).toBeCloseTo(0.316, 3)
    expect(ten.worst).toBeCloseTo(1, 12)
  })

  test('is what machines come to that are drawn about the values that were measured', () => {
    const exact: Measured = Object.fromEntries(
      measurementNames.map((name) => [
        name,
        name === 'home' ? 0.2 : name === 'needles' ? 0 : name === 'slack' ? 0.05 : 0.01,
      ]),
    )
    // Away from corners, where slopes change.
    const measured: Measured = { ...usual, slack: 0.3, pinHigh: 2.7, reach: 1.3 }
    const draws = 4000
    const drawn = count(1, draws).map((seed) =>
      margins(
        measuredRun({
          measured: Object.fromEntries(
            measurementNames.map((name, n) => [
              name,
              (measured[name] ?? 0) + (exact[name] ?? 0) * normalDraw(seed, 'catch', n),
            ]),
          ),
          speed: 500,
        }),
        1,
      ).map(({ mm }) => mm),
    )
    for (const [n, { id, mm, likely }] of measuredMargins({ measured, exact, speed: 500 }, 1).entries()) {
      const values = drawn.map((all) => all[n]!)
      const mean = values.reduce((sum, value) => sum + value, 0) / draws
      const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / draws)
      // A deviation of so many draws is itself out by one part in the root of twice as many; slopes change a little.
      expect({ id, deviation }).toEqual({ id, deviation: expect.closeTo(likely, 3) as number })
      expect(Math.abs(deviation - likely)).toBeLessThan(0.06 * likely + 2e-4)
      expect(Math.abs(mean - mm)).toBeLessThan(4 * (likely / Math.sqrt(draws)) + 2e-3)
    }
  })

  test('names what makes most of it, and says where nothing was measured', () => {
    const all = measuredMargins(
      { measured: { presserLeft: 1.1 }, exact: { presserLeft: 0.05 }, speed: 500 },
      -1,
    )
    const of = (id: string) => all.find((margin) => margin.id === id)!
    expect(of('dip')).toMatchObject({ likely: 0.05, worst: 0.05, most: 'presserLeft', isMeasured: true })
    expect(of('dip').mm).toBeCloseTo(0.2, 12)
    expect(of('push')).toMatchObject({ likely: 0, worst: 0, most: null, isMeasured: false })
  })

  test('bounds the chance of selection: by the one margin that may fail, and certain where none may', () => {
    const bounds = (presserLeft: number) =>
      selectionBounds(
        measuredMargins({ measured: { presserLeft }, exact: { presserLeft: 0.1 }, speed: 500 }, -1),
      )
    expect(bounds(1.5).least).toBeGreaterThan(0.999)
    // A dip one half of what it may be out by over the catch: one deviation, Φ(1).
    expect(bounds(0.95).least).toBeCloseTo(0.8413, 4)
    expect(bounds(0.95).most).toBeCloseTo(0.8413, 4)
    expect(bounds(0.9).most).toBeCloseTo(0.5, 9)
    expect(bounds(0.6).most).toBeLessThan(1e-6)
  })
})
