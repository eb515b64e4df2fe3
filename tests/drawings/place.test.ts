import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { along, columnAlong, layouts, readerMm } from '@/drawings/place/layout.ts'
import { project, type Point } from '@/drawings/place/projection.ts'
import { figure as place } from '@/drawings/place/figure.ts'
import { stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { hasHole } from '@/mechanism/card.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { needleMark } from '@/drawings/shared/needle-mark.ts'
import { everyNeedle } from '../mechanism/make.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { drawn, expectSameOverAll, expectSound, mixedCard, type State, stateOf, states } from './redraw.ts'

const pathsOf = (state: State, shape: 'wide' | 'narrow', selector: string): string[] =>
  [...drawn(place, state, shape).querySelectorAll(selector)].map((path) => path.getAttribute('d') ?? '')

/** Points of a path, as they are written. */
const pointsOf = (path: string): [number, number][] =>
  [...path.matchAll(/[ML]([-\d.]+),([-\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)])

const near = (point: readonly [number, number] | undefined, to: readonly [number, number]): void => {
  expect(point?.[0]).toBeCloseTo(to[0], 0)
  expect(point?.[1]).toBeCloseTo(to[1], 0)
}

/** How far a point is from the line between two others. */
const distance = (
  [x, y]: readonly [number, number],
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
): number => {
  const [across, down] = [x1 - x0, y1 - y0]
  const share = ((x - x0) * across + (y - y0) * down) / (across ** 2 + down ** 2 || 1)
  const on = Math.min(1, Math.max(0, share))
  return Math.hypot(x - x0 - on * across, y - y0 - on * down)
}

test('the projection is ISO 5456-3’s dimetric one', () => {
  const origin = { left: 0, top: 0 }
  const size = (point: Point): number => Math.hypot(...project(origin, point))
  expect([size([1, 0, 0]), size([0, 1, 0]), size([0, 0, 1])]).toEqual([1, 0.5, 1])
  const angle = ([x, y]: readonly [number, number]): number => (Math.atan2(y, x) * 180) / Math.PI
  expect(angle(project(origin, [1, 0, 0]))).toBeCloseTo(7)
  expect(angle(project(origin, [0, 1, 0]))).toBeCloseTo(-42)
  expect(angle(project(origin, [0, 0, 1]))).toBeCloseTo(-90)
})

describe.each(shapes)('the %s figure of the whole machine', (shape) => {
  const layout = layouts[shape]
  test('is the same however it came to its state', { timeout: 30000 }, () => expectSameOverAll(place, shape))
  test('has a number wherever one is due', () => expectSound(place, shape))

  test.each(states)('draws every needle once, by its mark, state %#', (state) => {
    const sheet = drawn(place, state, shape)
    for (const path of sheet.querySelectorAll('.stem-line')) {
      const mark = path.getAttribute('data-mark')
      const stems = (path.getAttribute('d')?.match(/M/g) ?? []).length
      expect([mark, stems]).toEqual([
        mark,
        everyNeedle.filter((index) => needleMark(state.frame, index) === mark).length,
      ])
    }
  })

  test.each(states)('moves pins, rods and strips as far as the model does, state %#', (state) => {
    const { frame } = state
    const pins = pathsOf(state, shape, '.pins-above .pin-line')
    for (const [n, path] of pins.entries()) {
      if (path === '') continue
      const lean = -frame.pinLeans[n]! * readerMm(layout)
      const tip = layout.reader.top + frame.pinHeights[n]! * layout.moved
      near(pointsOf(path)[1], project(layout, [columnAlong(layout, n + 1) + lean, layout.reader.pins, tip]))
    }
    const hooks = pathsOf(state, shape, '.catches .hooks')
    const still = pathsOf(stateOf([], 1, -12, { card: [0] }), shape, '.catches .hooks')
    for (let strip = 1; strip <= 8; strip++) {
      const first = everyNeedle.find(
        (index) => index >= layout.cut[0] + 3 && stripOfNeedle(index, usualPlace) === strip,
      )!
      const shift = (frame.stripShifts[strip - 1]! - dimensions.reach) * layout.moved
      const [x] = project(layout, [along(layout, first) + shift, 0, 0])
      const [rest] = project(layout, [along(layout, first), 0, 0])
      const [[moved], [resting]] = [hooks, still].map((all) => pointsOf(all[strip - 1]!)[0]!) as [
        [number, number],
        [number, number],
      ]
      expect(moved - resting).toBeCloseTo(
        x - rest + dimensions.reach * layout.moved * Math.cos((7 * Math.PI) / 180),
        0,
      )
    }
  })

  test('shows a pin above the card for every hole of the row being read, and no other', () => {
    const state = stateOf([], 3, 100)
    const above = pathsOf(state, shape, '.backs-above .back-leg').map((path) => path !== '')
    expect(above).toEqual(Array.from({ length: 24 }, (_, n) => hasHole(mixedCard[2]!, toColumn(n + 1))))
  })

  test('shows as many holes as the card’s rows have, from the one being read', () => {
    const state = stateOf([], 4, 100)
    const dots = pathsOf(state, shape, '.card-dots').join('').match(/M/g)?.length
    const rows = Math.floor(layout.card.high / layout.card.row - 0.8) + 1
    let holes = 0
    for (let n = 0; n < rows; n++)
      for (let column = 1; column <= 24; column++)
        if (hasHole(mixedCard[(3 + n) % mixedCard.length]!, toColumn(column))) holes++
    expect(dots).toBe(holes)
  })

  test('numbers every part that is there, and lets each be pressed', () => {
    const sheet = drawn(place, stateOf([], 3, 100), shape)
    const numbers = [...sheet.querySelectorAll('.balloon text')].map(({ textContent }) => Number(textContent))
    expect(numbers.sort()).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9])
    for (const id of 'card pin sweep rocker strip presser gate.1 gate.2 needle belt'.split(' '))
      expect(sheet.querySelector(`g[data-part="${id}"]`)).not.toBeNull()
  })

  test('reaches with every catch of a moving strip as far as the butts', () => {
    const state = stateOf([], 1, 100, { card: [0xffffff] })
    const hooks = pathsOf(state, shape, '.catches .hooks')
    const tall = (path: string): number => {
      const [first, , third] = pointsOf(path)
      return third![1] - first![1]
    }
    const strips = [...state.frame.stripShifts.keys()]
    const moving = strips.find((n) => state.frame.stripShifts[n]! > 0)!
    const still = strips.find((n) => state.frame.stripShifts[n]! === 0)!
    expect(tall(hooks[moving]!)).toBeGreaterThan(tall(hooks[still]!))
  })

  test('draws the sweep still and the arm short of the belt where that is not engaged', () => {
    const sweep = (x: number): string[] => pathsOf(stateOf(['belt.off'], 1, x), shape, '.sweep-tooth')
    expect(sweep(100)).toEqual(sweep(107))
    expect(pathsOf(stateOf([], 1, 100), shape, '.sweep-tooth')).not.toEqual(
      pathsOf(stateOf([], 1, 107), shape, '.sweep-tooth'),
    )
    const reach = (faults: string[]): number =>
      pointsOf(pathsOf(stateOf(faults, 1, 100), shape, '.belt-arm')[0]!).at(-1)![1]
    expect(reach(['belt.off'])).toBeGreaterThan(reach([]))
  })

  test('leaves the card out where there is none', () => {
    const sheet = drawn(place, stateOf([], 1, 100, { card: null }), shape)
    expect(sheet.querySelector('.card-standing')?.getAttribute('display')).toBe('none')
    const numbers = [...sheet.querySelectorAll('.balloon text')].map(({ textContent }) => textContent)
    expect(numbers).not.toContain('1')
  })

  test.each([-12, 0, 40, 99.5, 100, 160, 211])('lets no balloon lie on the belt, carriage at %d', (x) => {
    for (const pass of [1, 2]) {
      const sheet = drawn(place, stateOf([], pass, x), shape)
      const runs = [...sheet.querySelectorAll('.belt-run')].flatMap((path) =>
        (path.getAttribute('d') ?? '').split(/(?=M)/).map(pointsOf),
      )
      for (const balloon of sheet.querySelectorAll('.balloon')) {
        const [, left, top] = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(
          balloon.getAttribute('transform') ?? '',
        )!
        const radius = Number(balloon.querySelector('circle')?.getAttribute('r'))
        for (const run of runs)
          for (const [n, end] of run.entries())
            if (n > 0)
              expect(
                distance([Number(left), Number(top)], run[n - 1]!, end),
                `${balloon.textContent} and the belt`,
              ).toBeGreaterThan(radius)
      }
    }
  })

  test.each([-12, 0, 40, 99.5, 100, 160, 211])(
    'keeps balloons apart and inside with the carriage at %d',
    (x) => {
      for (const pass of [1, 2]) {
        const sheet = drawn(place, stateOf([], pass, x), shape)
        const places = [...sheet.querySelectorAll('.balloon')].map((balloon) =>
          /translate\(([-\d.]+) ([-\d.]+)\)/
            .exec(balloon.getAttribute('transform') ?? '')!
            .slice(1)
            .map(Number),
        )
        for (const [n, [x0, y0]] of places.entries()) {
          expect(x0).toBeGreaterThan(10)
          expect(x0).toBeLessThan(layout.width - 10)
          for (const [x1, y1] of places.slice(n + 1))
            expect(Math.hypot(x1! - x0!, y1! - y0!), `${n}`).toBeGreaterThan(19)
        }
      }
    },
  )
})

describe('in words', () => {
  test('the needles that are sorted are counted', () => {
    const { run, frame } = stateOf([], 1, 211, { card: [0xffffff] })
    expect(place.describe(run, frame)).toContain('Behind it 200 needles stand forward and 0 back.')
  })
  test.each(states)('nothing is left open, state %#', ({ run, frame }) => {
    expect(place.describe(run, frame)).not.toMatch(/NaN|undefined|null| {2}/)
  })
})
