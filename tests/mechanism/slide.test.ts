import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toBed, wholeBed } from '@/mechanism/bed.ts'
import { slide } from '@/mechanism/turn.ts'
import { beds, passes } from './arbitraries.ts'
import { check } from './check.ts'

const middle = { first: 90, last: 109 }

describe('sliding the carriage by hand', () => {
  test('within a pass only moves it', () => {
    expect(slide({ pass: 1, at: 20 }, 30, wholeBed)).toEqual({ pass: 1, at: 30, turned: null })
    expect(slide({ pass: 2, at: 30 }, 20, wholeBed)).toEqual({ pass: 2, at: 20, turned: null })
  })

  test('back among the needles winds the pass back', () => {
    expect(slide({ pass: 1, at: 150 }, -5, wholeBed)).toEqual({ pass: 1, at: -5, turned: null })
    expect(slide({ pass: 2, at: 50 }, 205, wholeBed)).toEqual({ pass: 2, at: 205, turned: null })
  })

  test('to the turn mark ends the pass', () => {
    expect(slide({ pass: 1, at: 150 }, 211, wholeBed)).toEqual({ pass: 2, at: 211, turned: 'mark' })
    expect(slide({ pass: 2, at: 20 }, -12, wholeBed)).toEqual({ pass: 3, at: -12, turned: 'mark' })
    expect(slide({ pass: 1, at: 100 }, 121, toBed(middle))).toEqual({ pass: 2, at: 121, turned: 'mark' })
  })

  test('beyond the turn mark stops at it', () => {
    expect(slide({ pass: 1, at: 150 }, 900, wholeBed)).toEqual({ pass: 2, at: 211, turned: 'mark' })
    expect(slide({ pass: 2, at: 150 }, -900, toBed(middle))).toEqual({ pass: 3, at: 78, turned: 'mark' })
  })

  test('beyond the start winds back to the start', () => {
    expect(slide({ pass: 1, at: 100 }, -900, toBed(middle))).toEqual({ pass: 1, at: 78, turned: null })
  })

  test('back over the last needle from beyond it is a short turn', () => {
    expect(slide({ pass: 1, at: 205 }, 199, wholeBed)).toEqual({ pass: 2, at: 199, turned: 'short' })
    expect(slide({ pass: 1, at: 205 }, 40, wholeBed)).toEqual({ pass: 2, at: 40, turned: 'short' })
    expect(slide({ pass: 2, at: 85 }, 90, toBed(middle))).toEqual({ pass: 3, at: 90, turned: 'short' })
  })

  test('back beyond the last needle, not over it, is no turn yet', () => {
    expect(slide({ pass: 1, at: 210 }, 200, wholeBed)).toEqual({ pass: 1, at: 200, turned: null })
    expect(slide({ pass: 2, at: 80 }, 89, toBed(middle))).toEqual({ pass: 2, at: 89, turned: null })
  })

  test('from the last needle itself, not beyond it, back is no turn', () => {
    expect(slide({ pass: 1, at: 199 }, 100, wholeBed)).toEqual({ pass: 1, at: 100, turned: null })
  })

  test('starts the next pass at its own start, so that sliding on does not turn again', () => {
    const turned = slide({ pass: 1, at: 100 }, 121, toBed(middle))
    expect(slide(turned, 110, toBed(middle))).toEqual({ pass: 2, at: 110, turned: null })
  })
})

test('sliding never leaves the marks, never skips a pass, and turns only forward', () => {
  const places = fc.double({ min: -500, max: 700, noNaN: true })
  check(
    fc.property(beds, passes, fc.array(places, { minLength: 1, maxLength: 30 }), (bed, pass, hand) => {
      let place = { pass, at: pass % 2 === 1 ? bed.first - 12 : bed.last + 12 }
      for (const to of hand) {
        const next = slide(place, to, bed)
        expect(next.at).toBeGreaterThanOrEqual(bed.first - 12)
        expect(next.at).toBeLessThanOrEqual(bed.last + 12)
        expect(next.pass - place.pass).toBe(next.turned === null ? 0 : 1)
        place = next
      }
    }),
    200,
  )
})
