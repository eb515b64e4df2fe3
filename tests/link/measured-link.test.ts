import fc from 'fast-check'
import { expect, test } from 'vitest'
import { linkText, measuredIn } from '@/link/measured-link.ts'
import {
  type Measured,
  type MeasurementName,
  measurementNames,
  measurements,
  usualOf,
  wrongOrders,
} from '@/mechanism/measurement.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { roundNumber } from '@/mechanism/number.ts'
import { library } from './library.ts'

/** Whatever the fields of the page take. */
const taken: fc.Arbitrary<Measured> = fc
  .record(
    Object.fromEntries(
      measurementNames.map((name) => [
        name,
        fc
          .double({ min: measurements[name].least, max: measurements[name].most, noNaN: true })
          .map((value) => (name === 'needles' ? 2 * Math.round(value / 2) : roundNumber(value))),
      ]),
    ) as Record<MeasurementName, fc.Arbitrary<number>>,
    { requiredKeys: [] },
  )
  .filter((measured) => wrongOrders(measured).length === 0)

test('a link brings back whatever the fields took, with nothing to say', () => {
  fc.assert(
    fc.property(taken, fc.integer({ min: 100, max: 900 }), (measured, speed) => {
      const found = measuredIn(linkText({ measured, speed }, library), library)
      expect(found?.troubles ?? []).toEqual([])
      for (const name of measurementNames) {
        const wanted = measured[name] ?? (name === 'slack' || name === 'timing' ? 0 : undefined)
        if (wanted === undefined) continue
        const back = found?.measured[name] ?? usualOf(name)
        // A link keeps four decimals of each dimension; a time is a product of several.
        expect(Math.abs(back - wanted)).toBeLessThan(1e-3 + 1e-3 * Math.abs(wanted))
      }
    }),
    { numRuns: 500 },
  )
})

test('a link brings back the needle of column 1, with and without measurements', () => {
  const columnOne = toNeedle(112)
  const text = linkText({ measured: { needles: 160 }, speed: 500, columnOne }, library)
  expect(text).toBe('first=R13&own=1_bed-160')
  expect(measuredIn(text, library)).toMatchObject({ measured: { needles: 160 }, columnOne, troubles: [] })
  expect(measuredIn('first=R13', library)).toMatchObject({ measured: {}, columnOne })
})

test('a link that says nothing of a measurement brings none', () => {
  expect(measuredIn('pass=3&break=strip.3.seized', library)).toBeNull()
  expect(linkText({ measured: {}, speed: 500 }, library)).toBe('')
})
