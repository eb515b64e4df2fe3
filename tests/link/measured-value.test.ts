import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readMeasured } from '@/link/measured-value.ts'
import { measurementNames, measurements } from '@/mechanism/measurement.ts'

describe('a measured value as it is typed', () => {
  test.each([
    ['1.35', 1.35],
    ['1,35', 1.35],
    [' 1.35 mm ', 1.35],
    ['0.05in', 1.27],
    ['0.05"', 1.27],
    ['0.05 inch', 1.27],
    ['0.12 cm', 1.2],
  ])('%j is %d mm', (text, value) => {
    const reading = readMeasured('presserLeft', text)
    expect(reading.kind).toBe('read')
    expect(reading.kind === 'read' && reading.value).toBeCloseTo(value, 9)
  })

  test('a time is in ms or seconds, and play in needles', () => {
    expect(readMeasured('home', '0.3 s')).toEqual({ kind: 'read', value: 300 })
    expect(readMeasured('home', '300')).toEqual({ kind: 'read', value: 300 })
    expect(readMeasured('slack', '1.5 needles')).toEqual({ kind: 'read', value: 1.5 })
    expect(readMeasured('timing', '−0,5')).toEqual({ kind: 'read', value: -0.5 })
    expect(readMeasured('needles', '160')).toEqual({ kind: 'read', value: 160 })
  })

  test.each([
    ['presserLeft', 'shallow', 'is no such measure'],
    ['presserLeft', '1.2 s', 'is no such measure'],
    ['presserLeft', '-1', 'lies outside 0 to 8 mm'],
    ['presserLeft', '1.2.3', 'is no such measure'],
    ['presserLeft', '99', 'lies outside 0 to 8 mm'],
    ['home', '5 mm', 'is no such measure'],
    ['needles', '161', 'so their number is even'],
    ['needles', '99.5', 'so their number is even'],
    ['needles', '58', 'lies outside 60 to 250 needles'],
    ['needles', '252', 'lies outside 60 to 250 needles'],
    ['needles', '-160', 'lies outside 60 to 250 needles'],
    ['needles', 'many', 'is no such measure'],
    ['timing', '13', 'lies outside -12 to 12 needles'],
  ] as const)('for %s, %j gets a sentence', (name, text, words) => {
    const reading = readMeasured(name, text)
    expect(reading.kind === 'refused' && reading.reason).toContain(words)
  })

  test('never throws, and gives nothing beyond its limits', () => {
    fc.assert(
      fc.property(fc.constantFrom(...measurementNames), fc.string(), (name, text) => {
        const reading = readMeasured(name, text)
        if (reading.kind !== 'read') return
        expect(reading.value).toBeGreaterThanOrEqual(measurements[name].least)
        expect(reading.value).toBeLessThanOrEqual(measurements[name].most)
      }),
    )
    expect(readMeasured('reach', '  ')).toEqual({ kind: 'empty' })
  })
})
