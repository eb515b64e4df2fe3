import { describe, expect, test } from 'vitest'
import { dimensions } from '@/mechanism/dimensions.ts'
import { fullShift } from '@/mechanism/rocker.ts'
import {
  earlyWindow,
  ghostSpeed,
  ghostSpeedExact,
  heldWindow,
  lateWindow,
  lowEnoughTime,
  missedSpeed,
  releaseTime,
  slackWindow,
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

const misses = (faults: readonly string[], pass: number, speed = 500): boolean =>
  selectedIn(machine([0xffffff], faults, { speed }), pass).length === 0
const timing = (by: number): string => `belt.timing=${by.toFixed(5)}`

describe('the window of timing', () => {
  test('begins 0.732 needles late: up to there a strip reaches its catch in time', () => {
    const reached = 1.2 + (0.9 / Math.PI) * Math.acos((2 * (1.2 + 0.2)) / (1.0 * 2.0) - 1)
    expect(reached.toFixed(3)).toBe('1.532')
    expect(lateWindow).toBeCloseTo(reached - 0.8, 12)
    expect(lateWindow.toFixed(3)).toBe('0.732')
  })

  test.each([
    [1, -1],
    [2, 1],
  ])('is what the belt may be late by in pass %i', (pass, sign) => {
    const late = onset(0.4, 1.2, (out) => misses([timing(sign * out)], pass))
    expect(Math.abs(late - lateWindow)).toBeLessThan(1e-4)
  })

  test('ends, at a speed at which a strip follows its rocker, where it falls to where a catch lets go', () => {
    const follows = 1.2 + (0.9 / Math.PI) * Math.acos((2 * (0.6 + 0.2)) / (1.0 * 2.0) - 1)
    expect(follows.toFixed(3)).toBe('1.708')
    for (const speed of [60, 200, 390]) expect(heldWindow(speed)).toBeCloseTo(follows - 0.8, 12)
    expect(heldWindow(200).toFixed(3)).toBe('0.908')
  })

  test('ends later where a strip leaves its rocker: 0.921 needles at the usual speed', () => {
    const k = (4 * 500) / (1000 * 4.5)
    const steep = (Math.PI * k) / 0.9
    const at =
      1.2 + (0.9 / Math.PI) * (Math.atan(1 / steep) + Math.asin((1 + 0.4) / Math.sqrt(1 + steep ** 2)))
    const shift = 1 + Math.cos((Math.PI * (at - 1.2)) / 0.9) - 0.2
    expect(heldWindow(500)).toBeCloseTo(at + k * Math.log((shift + 0.6) / (0.6 + 0.6)) - 0.8, 12)
    expect((heldWindow(500) + 0.8).toFixed(3)).toBe('1.721')
    expect(heldWindow(500).toFixed(3)).toBe('0.921')
    expect(onset(300, 500, (speed) => heldWindow(speed) > heldWindow(60) + 1e-9)).toBeCloseTo(395, 0)
  })

  test.each([
    [200, '0.969'],
    [500, '1.075'],
    [900, '1.353'],
  ])(
    'with what a butt let go just before the gate has left ends at %i mm/s %s needles early',
    (speed, early) => {
      expect(lowEnoughTime).toBeCloseTo(2 * Math.log(0.9 / 0.45), 12)
      expect(earlyWindow(speed).toFixed(3)).toBe(early)
      for (const [pass, sign] of [
        [1, 1],
        [2, -1],
      ] as const) {
        const found = onset(0.7, 1.5, (out) => misses([timing(sign * out)], pass, speed))
        expect(Math.abs(found - earlyWindow(speed))).toBeLessThan(1e-4)
      }
    },
  )

  test('lets a timing error between its ends fail one way only, and a greater one both ways', () => {
    const ways = (faults: readonly string[]): boolean[] => [1, 2].map((pass) => misses(faults, pass))
    expect(ways(['belt.timing=0.7'])).toEqual([false, false])
    expect(ways(['belt.timing=0.8'])).toEqual([false, true])
    expect(ways(['belt.timing=-0.8'])).toEqual([true, false])
    expect(ways(['belt.timing=1.2'])).toEqual([true, true])
    expect(ways(['belt.timing=0.4', 'belt.slack=0.7'])).toEqual([false, true])
  })

  test('lets slack alone show nothing up to 1.464 needles, and then nothing selected either way', () => {
    expect(slackWindow.toFixed(3)).toBe('1.464')
    for (const pass of [1, 2]) {
      const found = onset(0.8, 3, (slack) => misses([`belt.slack=${slack.toFixed(5)}`], pass))
      expect(Math.abs(found - slackWindow)).toBeLessThan(1e-4)
    }
  })

  test('lets slack from 13.85 to 17.46 needles move the pattern eight late, both ways', () => {
    const moved = (slack: number, pass: number): boolean =>
      selectedIn(machine([rowWith(5)], [`belt.slack=${slack.toFixed(5)}`]), pass).includes(
        104 + (pass === 1 ? 8 : -8),
      )
    for (const pass of [1, 2]) {
      const [first, last] = [
        onset(12, 15, (slack) => moved(slack, pass)),
        onset(15, 19, (slack) => !moved(slack, pass)),
      ]
      expect(Math.abs(first - 2 * (8 - earlyWindow(500)))).toBeLessThan(1e-4)
      expect(Math.abs(last - 2 * (8 + lateWindow))).toBeLessThan(1e-4)
      expect([first, last].map((slack) => slack.toFixed(2))).toEqual(['13.85', '17.46'])
    }
  })

  test.each([8, -8, 16, 24])('moves the pattern with the belt out by %i needles, both ways', (out) => {
    for (const pass of [1, 2]) {
      const plain = selectedIn(machine([rowWith(5, 7)]), pass)
      const moved = selectedIn(machine([rowWith(5, 7)], [`belt.timing=${out}`]), pass)
      const inside = (needles: number[]): number[] => needles.filter((n) => n > 30 && n < 170)
      expect(inside(moved)).toEqual(inside(plain.map((needle) => needle - out)))
    }
  })
})

describe('the speed at which a thickened strip catches the needle eight on', () => {
  // One hole, in column 5: R5 and, eight needles on, R13. Going left the ghost falls on L4.
  const ghosts = (oil: number, pass: number) => (speed: number) =>
    selectedIn(machine([rowWith(5)], [`strip.5.slow=${oil}`], { speed }), pass).includes(
      pass === 1 ? 112 : 96,
    )

  test('is 313 mm/s at 300 ms, and 730 for the needle sixteen on', () => {
    expect(fullShift(dimensions)).toBeCloseTo(1.8, 12)
    expect(releaseTime(300)).toBeCloseTo(300 * Math.log((1.8 + 0.6) / (1.2 + 0.6)), 9)
    expect(ghostSpeed(300)).toBeCloseTo((1000 * 4.5 * (8 - 0.8 - 1.2)) / (300 * Math.log(2.4 / 1.8)), 9)
    expect(Math.round(releaseTime(300))).toBe(86)
    expect(Math.round(ghostSpeed(300))).toBe(313)
    expect(Math.round(ghostSpeed(300, 2))).toBe(730)
  })

  test.each([
    [1, 'right'],
    [2, 'left'],
  ])('is that of the model to half a per cent in pass %i, to the %s', (pass) => {
    const found = onset(250, 600, ghosts(300, pass))
    expect(Math.abs(found / 313 - 1)).toBeLessThan(0.005)
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
    expect(missedSpeed(50)).toBeCloseTo((1000 * 1.6 * 4.5) / (50 * Math.log(1.5 / 0.45)), 9)
  })

  test.each([10, 50, 80])('is that of the model for a stiff butt of %i ms', (stiff) => {
    const missed = (speed: number): boolean =>
      selectedIn(machine([0], [`needle.R3.stiff=${stiff}`], { speed }), 1).length > 0
    expect(onset(50, 2000, missed) / missedSpeed(stiff)).toBeCloseTo(1, 9)
  })
})
