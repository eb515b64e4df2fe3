import { describe, expect, test } from 'vitest'
import { fullShift } from '@/mechanism/rocker.ts'
import {
  ghostSpeed,
  ghostSpeedExact,
  missedSpeed,
  releaseTime,
  timingWindow,
} from '@/mechanism/closed-forms.ts'
import { machine, selectedIn } from './make.ts'
import { rowWith } from './trade.ts'

/** The value between `low` and `high` at which something begins to happen. */
const onset = (low: number, high: number, happens: (value: number) => boolean): number => {
  expect([happens(low), happens(high)]).toEqual([false, true])
  let [not, does] = [low, high]
  for (let n = 0; n < 40; n++) {
    const middle = (not + does) / 2
    if (happens(middle)) does = middle
    else not = middle
  }
  return does
}

describe('the window of timing', () => {
  test('is 0.590 needles to each side', () => {
    expect(timingWindow).toBeCloseTo((1.6 / Math.PI) * Math.acos((2 * (1.2 + 0.2)) / (1.0 * 2.0) - 1), 12)
    expect(timingWindow.toFixed(3)).toBe('0.590')
  })

  test.each([1, -1])('is what the belt itself may be out by (sign %i)', (sign) => {
    const fails = (out: number): boolean =>
      selectedIn(machine([0xffffff], [`belt.timing=${(sign * out).toFixed(4)}`]), 1).length === 0
    expect(Math.abs(onset(0.4, 0.8, fails) - timingWindow)).toBeLessThan(1e-4)
  })

  test('is what half the slack of the belt may come to', () => {
    const fails = (slack: number): boolean =>
      selectedIn(machine([0xffffff], [`belt.slack=${slack.toFixed(4)}`]), 2).length === 0
    expect(Math.abs(onset(0.8, 1.6, fails) / 2 - timingWindow)).toBeLessThan(1e-4)
  })
})

describe('the speed at which a thickened strip catches the needle eight on', () => {
  // One hole, in column 5: R5 and, eight needles on, R13. Going left the ghost falls on L4.
  const ghosts = (oil: number, pass: number) => (speed: number) =>
    selectedIn(machine([rowWith(5)], [`strip.5.slow=${oil}`], { speed }), pass).includes(
      pass === 1 ? 112 : 96,
    )

  test('is 417 mm/s at 300 ms', () => {
    expect(fullShift).toBeCloseTo(1.8, 12)
    expect(releaseTime(300)).toBeCloseTo(300 * Math.log((1.8 + 0.6) / (1.2 + 0.6)), 9)
    expect(ghostSpeed(300)).toBeCloseTo(36_000 / (300 * Math.log(2.4 / 1.8)), 9)
    expect(Math.round(ghostSpeed(300))).toBe(417)
  })

  test.each([
    [1, 'right'],
    [2, 'left'],
  ])('is that of the model to half a per cent in pass %i, to the %s', (pass) => {
    const found = onset(300, 600, ghosts(300, pass))
    expect(Math.abs(found / 417 - 1)).toBeLessThan(0.005)
    expect(found / ghostSpeedExact(300)).toBeCloseTo(1, 9)
  })

  test.each([70, 150, 600, 2000])('has an exact form that the model meets at %i ms', (oil) => {
    expect(onset(10, 2000, ghosts(oil, 1)) / ghostSpeedExact(oil)).toBeCloseTo(1, 9)
  })

  test('is in inverse proportion to the oil’s time constant', () => {
    expect(ghostSpeed(300) / ghostSpeed(600)).toBeCloseTo(2, 12)
    expect(ghostSpeedExact(300) / ghostSpeedExact(600)).toBeCloseTo(2, 9)
  })
})

describe('the speed at which the first gate misses a free butt', () => {
  test('is gateLag times pitch over the time the butt takes to come up to the gate', () => {
    expect(missedSpeed(50)).toBeCloseTo((1000 * 2 * 4.5) / (50 * Math.log(1.5 / 0.45)), 9)
  })

  test.each([10, 50, 80])('is that of the model for a stiff butt of %i ms', (stiff) => {
    const missed = (speed: number): boolean =>
      selectedIn(machine([0], [`needle.R3.stiff=${stiff}`], { speed }), 1).length > 0
    expect(onset(50, 2000, missed) / missedSpeed(stiff)).toBeCloseTo(1, 9)
  })
})
