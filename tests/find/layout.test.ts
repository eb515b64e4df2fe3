import { describe, expect, test } from 'vitest'
import { hasBefore, layoutOf } from '@/find/layout.ts'
import { modulo, usualPlace, wholeBed } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { lateWindow } from '@/mechanism/closed-forms.ts'
import { leadOf } from '@/mechanism/sweep.ts'

const { columnOne } = usualPlace
const inTime = { right: 0, left: 0 }
const layout = (offset = 0, early = inTime) => layoutOf(dimensions, wholeBed, columnOne, offset, early)
const outside = Math.floor(dimensions.turnMark + leadOf(dimensions) + dimensions.sweepFlat)

describe('which needles follow which column', () => {
  test.each([0, 8, -8])('is every twenty-fourth, moved by what moves the pattern: %d', (offset) => {
    const { followers } = layout(offset)
    expect(followers.map(({ needles }) => needles.length).reduce((sum, one) => sum + one, 0)).toBe(200)
    for (const [column, { needles, forced }] of followers.entries()) {
      expect([...forced].every((looks) => looks === 0)).toBe(true)
      // A needle follows the column of the one so far to its right.
      for (const needle of needles) expect(modulo(needle + offset - columnOne, 24)).toBe(column)
    }
  })

  test('and from where a pass has pushed a column’s pin: as soon as the sweep comes by it', () => {
    const { metFrom } = layout()
    for (const [column, { right, left }] of metFrom.entries()) {
      expect([modulo(right - columnOne, 24), modulo(left - columnOne, 24)]).toEqual([column, column])
      expect(right).toBeGreaterThanOrEqual(wholeBed.first - outside)
      expect(right).toBeLessThan(wholeBed.first - outside + 24)
      expect(left).toBeLessThanOrEqual(wholeBed.last + outside)
      expect(left).toBeGreaterThan(wholeBed.last + outside - 24)
    }
    // A sweep later than its window pushes a pin when its own needle is past.
    const late = layout(0, { right: -lateWindow - 2.5, left: 0 }).metFrom
    expect(late.every(({ right }, n) => modulo(right - metFrom[n]!.right - 3, 24) === 0)).toBe(true)
    expect(late.map(({ left }) => left)).toEqual(metFrom.map(({ left }) => left))
  })

  test('and whether a push so many of a strip’s needles before falls into a pass', () => {
    const own = layout()
    const reach = (count: number): number => wholeBed.first - outside + 8 * count
    for (const count of [1, 2, 3]) {
      expect(hasBefore(own, reach(count), count)).toEqual({ right: true, left: true })
      expect(hasBefore(own, reach(count) - 1, count).right).toBe(false)
      const last = wholeBed.last + outside - 8 * count
      expect(hasBefore(own, last, count)).toEqual({ right: true, left: true })
      expect(hasBefore(own, last + 1, count).left).toBe(false)
    }
  })
})
