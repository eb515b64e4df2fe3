import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as timing } from '@/drawings/timing/figure.ts'
import { letGos } from '@/drawings/timing/compare.ts'
import { columnAt, meetingPlace } from '@/drawings/timing/curves.ts'
import { layouts, stripBase, windowFrom, windowX } from '@/drawings/timing/layout.ts'
import { columnOfNeedle, passEnds, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { leadOf } from '@/mechanism/sweep.ts'
import { allStrips, toColumn, toNeedle, toStrip } from '@/mechanism/indices.ts'
import { stripShift } from '@/mechanism/strip.ts'
import { isWithin, pointsOf, spanOf } from './path-points.ts'
import { drawn, emptySheet, expectSameOverAll, expectSound, type State, stateOf, states } from './redraw.ts'

const curvesOf = (sheet: SVGSVGElement): Element[] => [...sheet.querySelectorAll('.fills .happened')]

/** The part of the bed that is in the window and in the pass, in needles. */
const windowOf = ({ frame }: State, shape: (typeof shapes)[number]): { low: number; high: number } => {
  const layout = layouts[shape]
  const { bed } = frame.condition
  const from = windowFrom(layout, frame.x, frame.pass.way, bed)
  const { start, end } = passEnds(frame.pass.pass, bed)
  return {
    low: Math.max(from, Math.min(start, end)),
    high: Math.min(from + layout.needles - 1, Math.max(start, end)),
  }
}

describe.each(shapes)('the %s timing chart', (shape) => {
  const layout = layouts[shape]

  test('is the same however it came to its state', () => expectSameOverAll(timing, shape))
  test('has a number wherever one is due', () => expectSound(timing, shape))

  test.each(states)('draws every strip’s shift where the model has it, state %#', (state) => {
    const { condition, pass } = state.frame
    for (const [n, curve] of curvesOf(drawn(timing, state, shape)).entries()) {
      const base = stripBase(layout, toStrip(n + 1))
      for (const [x, y] of pointsOf(curve)) {
        const mm = (base - y) / layout.perMm
        if (mm < 0.01) continue
        const at = x / layout.pitch
        const near = [at - 0.01, at, at + 0.01].map((place) =>
          stripShift(condition, pass.drive, toStrip(n + 1), place),
        )
        expect(mm).toBeGreaterThan(Math.min(...near) - 0.02)
        expect(mm).toBeLessThan(Math.max(...near) + 0.02)
      }
    }
  })

  test.each(states)('leaves out no shift, state %#', (state) => {
    const { condition, pass } = state.frame
    const { low, high } = windowOf(state, shape)
    for (const [n, curve] of curvesOf(drawn(timing, state, shape)).entries()) {
      const base = stripBase(layout, toStrip(n + 1))
      const outline = pointsOf(curve)
      for (let x = low + 0.05; x < high; x += 0.37) {
        const shift = stripShift(condition, pass.drive, toStrip(n + 1), x)
        if (shift < 0.1) continue
        const pieces = outline.length > 0 ? splitAt(curve) : []
        const inside = pieces.some((piece) =>
          isWithin([x * layout.pitch, base - (shift - 0.07) * layout.perMm], piece),
        )
        expect(inside, `strip ${n + 1} at ${x}`).toBe(true)
      }
    }
  })

  test.each(states)('marks each let-go in its own lane, at every eighth needle, state %#', (state) => {
    const { low, high } = windowOf(state, shape)
    for (const strip of allStrips) {
      const { condition } = state.frame
      const places = letGos(strip, { low, high }, condition)
      for (const place of places) expect((columnAt(place, condition) - 1) % dimensions.strips).toBe(strip - 1)
    }
    const { first, last } = state.frame.condition.bed
    const ticks = pointsOf(drawn(timing, state, shape).querySelector('.let-go')).filter((_, n) => n % 2 === 0)
    for (let place = Math.ceil(Math.max(low, first)); place <= Math.min(high, last); place++) {
      const lane = ticks.filter(([x]) => Math.abs(x / layout.pitch - place) < 0.01)
      expect(lane).toHaveLength(1)
      const strip = stripOfNeedle(toNeedle(place), state.frame.condition)
      expect(lane[0]![1]).toBeGreaterThan(stripBase(layout, strip))
      expect(lane[0]![1]).toBeLessThan(stripBase(layout, strip) + 8)
    }
  })

  test('fills what has happened and leaves open what is to come, both ways', () => {
    for (const state of states) {
      const now = windowX(
        layout,
        windowFrom(layout, state.frame.x, state.frame.pass.way, state.frame.condition.bed),
        state.frame.x,
      )
      const clip = drawn(timing, state, shape).querySelector('.past-clip rect')!
      const [x, width] = [Number(clip.getAttribute('x')), Number(clip.getAttribute('width'))]
      expect(state.frame.pass.way === 1 ? x + width : x).toBeCloseTo(now, 0)
    }
  })

  test('gives back the place of the carriage under the cursor', () => {
    for (const { frame } of states) {
      const x = windowX(layout, windowFrom(layout, frame.x, frame.pass.way, frame.condition.bed), frame.x)
      expect(timing.placeAt!(shape, x, layout.strips, frame)).toBeCloseTo(frame.x, 6)
      expect(timing.placeAt!(shape, x, layout.height, frame)).toBeNull()
    }
  })

  test('keeps the cursor in the window, at every place and both ways', () => {
    for (const way of [1, -1] as const)
      for (let x = -12; x <= 211; x += 0.7) {
        const from = windowFrom(layout, x, way, { first: toNeedle(0), last: toNeedle(199) })
        expect(x - from).toBeGreaterThanOrEqual(0)
        expect(x - from).toBeLessThanOrEqual(layout.needles - 1)
      }
  })
})

/** The closed pieces of a path. */
const splitAt = (curve: Element): (readonly [number, number])[][] =>
  (curve.getAttribute('d') ?? '')
    .split('Z')
    .filter((piece) => piece !== '')
    .map((piece) => {
      const made = curve.ownerDocument.createElement('path')
      made.setAttribute('d', piece)
      return pointsOf(made)
    })

describe('what the timing chart sets side by side', () => {
  const everyHole = { card: [0xffffff] }
  const dashed = (state: State): string =>
    drawn(timing, state, 'wide').querySelector('.shifts-missing')?.getAttribute('d') ?? ''
  const hatched = (state: State): string =>
    drawn(timing, state, 'wide').querySelector('.unasked')?.getAttribute('d') ?? ''

  test('a sound machine shows nothing missing and nothing unasked', () => {
    const state = stateOf([], 17, 120)
    expect(dashed(state) + hatched(state)).toBe('')
  })
  test('a seized strip shows its curve dashed, in its own lane only', () => {
    const state = stateOf(['strip.3.seized'], 1, 120, everyHole)
    const sheet = drawn(timing, state, 'wide')
    const { least, most } = spanOf(sheet.querySelector('.shifts-missing'), 1)
    const { perMm } = layouts.wide
    expect(most).toBeCloseTo(stripBase(layouts.wide, toStrip(3)), 1)
    const full = dimensions.ratio * dimensions.sweepThrow - dimensions.lost
    expect((most - least) / perMm).toBeCloseTo(full, 1)
    expect(curvesOf(sheet)[2]!.getAttribute('d')).toBe('')
  })
  test('a worn machine that still selects shows nothing missing', () => {
    const state = stateOf([], 17, 120, { wear: 0.2 })
    expect(dashed(state)).toBe('')
  })
  test('a slow strip is hatched at the next let-go when fast, not when slow', () => {
    const slow = (speed: number): State => stateOf(['strip.1.slow'], 1, 140, { card: [0x800000], speed })
    expect(hatched(slow(300))).toBe('')
    const { least, most } = spanOf(drawn(timing, slow(700), 'wide').querySelector('.unasked'), 0)
    const place = letGos(toStrip(1), { low: 124, high: 139 }, usualPlace).find(
      (x) => columnOfNeedle(toNeedle(x), usualPlace) === 9,
    )!
    expect(least).toBeLessThan(place * layouts.wide.pitch)
    expect(most).toBeGreaterThan(place * layouts.wide.pitch)
  })
  test.each([
    [1, 1],
    [2, -1],
  ])('the belt’s timing moves every push away from its let-go, pass %i', (pass, way) => {
    const { frame } = stateOf(['belt.timing=3', 'belt.slack=1'], pass, 120)
    const place = meetingPlace({ condition: frame.condition, drive: frame.pass.drive }, toColumn(1))
    expect(100 - place).toBeCloseTo(3 - way / 2 - way * leadOf(dimensions), 9)
  })
  test.each([17, 18])(
    'draws a line from each release to the first gate where a catch lets go, pass %i',
    (pass) => {
      const state = stateOf([], pass, 120)
      const points = pointsOf(drawn(timing, state, 'wide').querySelector('.hold-span'))
      const base = stripBase(layouts.wide, stripOfNeedle(toNeedle(120), usualPlace))
      const y = base - dimensions.letGo * layouts.wide.perMm
      const at = points.findIndex(([x]) => Math.abs(x / layouts.wide.pitch - 120) < 0.01)
      expect(points[at]![1]).toBeCloseTo(y, 1)
      expect(points[at + 1]![1]).toBeCloseTo(y, 1)
      const gate = 120 + state.frame.pass.way * dimensions.gateLag
      expect(points[at + 1]![0] / layouts.wide.pitch).toBeCloseTo(gate, 2)
    },
  )
  test('crosses out a needle where its catch lets go before the first gate, once the carriage is there', () => {
    const crosses = (at: number): number =>
      pointsOf(
        drawn(timing, stateOf(['belt.timing=1.2'], 1, at, everyHole), 'wide').querySelector(
          '.dot[data-verdict="wrong"]',
        ),
      ).length
    const { pass } = stateOf(['belt.timing=1.2'], 1, 120, everyHole).frame
    const keptFor = pass.keptFor[120]!
    expect(keptFor).toBeGreaterThan(0)
    expect(keptFor).toBeLessThan(dimensions.gateLag)
    expect(crosses(120 + keptFor + 0.01)).toBeGreaterThan(crosses(120 + keptFor - 0.01))
    expect(
      drawn(timing, stateOf([], 1, 120, everyHole), 'wide')
        .querySelector('.dot[data-verdict="wrong"]')
        ?.getAttribute('d'),
    ).toBe('')
  })
  test('marks where a strip falls so far that its catches let go', () => {
    const { run, frame } = stateOf([], 1, 120, everyHole)
    const falls = pointsOf(drawn(timing, { run, frame }, 'wide').querySelector('.falls')).length
    expect(falls).toBeGreaterThan(0)
    const seized = stateOf(['strip.1.seized'], 1, 120, everyHole)
    expect(pointsOf(drawn(timing, seized, 'wide').querySelector('.falls')).length).toBeLessThan(falls)
  })
  test('a fault below the strips leaves the curves as they should be', () => {
    const state = stateOf(['catch.R5.broken', 'presser.right.worn=1'], 17, 120)
    expect(dashed(state) + hatched(state)).toBe('')
  })
  test('keeps a window that is held, and draws the same machine in it', () => {
    const { run, frame } = stateOf([], 17, 120)
    const sheet = emptySheet()
    timing.draw(sheet, run, frame, { shape: 'wide', prefix: 'test', from: 100.5 })
    const x = Number(
      /translate\(([-\d.]+)/.exec(sheet.querySelector('.scroll')!.getAttribute('transform')!)![1],
    )
    expect(x).toBeCloseTo(windowX(layouts.wide, 100.5, 0), 1)
  })
})
