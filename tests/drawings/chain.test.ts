import fc from 'fast-check'
import { spanOf } from './path-points.ts'
import { describe, expect, test } from 'vitest'
import { figure as chain } from '@/drawings/chain/figure.ts'
import { boxOf, partAt, partRows } from '@/drawings/chain/part-at.ts'
import { bedX, layouts, liftMm, needleX, perMm, windowFrom } from '@/drawings/chain/layout.ts'
import { mapNeedle, mapX } from '@/drawings/chain/map-band.ts'
import { needleName, wholeBed } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { drawn, expectSameOverAll, expectSound, stateOf, states } from './redraw.ts'

/** Where an outline begins, from the left. */
const leftOf = (element: Element | null): number =>
  Number(/^M([-\d.]+)/.exec(element?.getAttribute('d') ?? '')?.[1])

describe('the whole chain as drawn', () => {
  test.each(shapes)('is the same however it came to its state (%s)', (shape) => {
    expectSameOverAll(chain, shape)
  })
  test.each(shapes)('has a number wherever one is due (%s)', (shape) => {
    expectSound(chain, shape)
  })
  test.each(shapes)('puts every strip where the model has it, to scale (%s)', (shape) => {
    for (const state of states) {
      const sheet = drawn(chain, state, shape)
      for (let strip = 1; strip <= 8; strip++) {
        const bar = sheet.querySelector(`.strip[data-part="strip.${strip}"]`)
        const layout = layouts[shape]
        const from = windowFrom(layout, state.frame.x, state.frame.pass.way)
        const window = layout.left + 0.3 * layout.pitch
        const begins = Math.max(window, layout.left + (-1.2 - from) * layout.pitch)
        const shift = (state.frame.stripShifts[strip - 1] ?? 0) * perMm(layout)
        expect(leftOf(bar) - begins).toBeCloseTo(shift, 0)
        // It ends at the bed's end, a little past the last needle, wherever the window is.
        const most = layout.left + (199 + 1.2 - from) * layout.pitch + shift
        expect(spanOf(bar, 0).most).toBeLessThan(most + 1)
      }
    }
    const [end] = [stateOf([], 1, 211)]
    const right = (strip: number) =>
      spanOf(drawn(chain, end, shape).querySelector(`.strip[data-part="strip.${strip}"]`), 0).most
    const layout = layouts[shape]
    const last = layout.left + (199 - windowFrom(layout, 211, 1)) * layout.pitch
    for (let strip = 1; strip <= 8; strip++) expect(right(strip) - last).toBeLessThan(2 * layout.pitch)
  })
  test.each(shapes)(
    'draws the cams that bring back what the last pass set out, where needles move (%s)',
    (shape) => {
      const layout = layouts[shape]
      for (const pass of [2, 3]) {
        const { run, frame } = stateOf([], pass, 100)
        const sheet = drawn(chain, { run, frame }, shape)
        const from = windowFrom(layout, frame.x, frame.pass.way)
        const [forward = [], back = []] = (sheet.querySelector('.leading-walls')?.getAttribute('d') ?? '')
          .split('Z')
          .map((d) =>
            [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
          )
        let moving = 0
        for (let ahead = 2.6; ahead < 6.4; ahead += 1) {
          const index = Math.round(100 + frame.pass.way * ahead)
          const travel = frame.needleTravels[index]!
          if (Math.abs(travel) < 0.5 || Math.abs(travel) > 6) continue
          const x = layout.left + (index - from) * layout.pitch
          const butt = layout.line + travel * perMm(layout)
          const face = (travel > 0 ? forward : back).slice(0, 13)
          const near = face.reduce((best, point) =>
            Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best,
          )
          const half = shape === 'wide' ? 5 : 4
          expect(Math.abs(near[1] - butt - Math.sign(travel) * half)).toBeLessThan(4)
          moving++
        }
        expect(moving, `pass ${pass}`).toBeGreaterThan(0)
      }
    },
  )
  test.each(shapes)('puts every butt in the window at the model’s height (%s)', (shape) => {
    const layout = layouts[shape]
    for (const state of states) {
      const sheet = drawn(chain, state, shape)
      const butts = [...sheet.querySelectorAll('.butts .butt')].flatMap((path) =>
        [...(path.getAttribute('d') ?? '').matchAll(/M([-\d.]+),([-\d.]+)h([\d.]+)/g)].map(
          ([, x, y, wide]) => ({
            index: Math.round((Number(x) + Number(wide) / 2 - bedX(layout, 0)) / layout.pitch),
            height: (layout.rest - Number(y)) / liftMm(layout),
          }),
        ),
      )
      const from = windowFrom(layout, state.frame.x, state.frame.pass.way)
      const { first, last } = state.frame.condition.bed
      for (
        let index = Math.max(first, Math.ceil(from));
        index < Math.min(last, from + layout.needles);
        index++
      ) {
        const heights = butts.filter((butt) => butt.index === index).map(({ height }) => height)
        const isThere = !state.frame.condition.needleGone[index]
        expect(heights).toHaveLength(isThere ? 1 : 0)
        if (isThere) expect(heights[0]).toBeCloseTo(state.frame.buttHeights[index] ?? 0, 1)
      }
    }
  })
  test('marks as missed just the needles that the model says are missed by now', () => {
    const state = stateOf(['strip.3.seized'], 1, 120, { card: [0xffffff] })
    const sheet = drawn(chain, state, 'wide')
    const marked = [...sheet.querySelectorAll('.needle[data-mark="missed"]')].map((needle) =>
      needle.getAttribute('data-part'),
    )
    const from = windowFrom(layouts.wide, 120, 1)
    const expected = state.frame.departures
      .map(({ needle }) => needle)
      .filter((index) => index > from - 1 && index < from + layouts.wide.needles)
      .map((index) => `needle.${needleName(index)}`)
    expect(expected.length).toBeGreaterThan(2)
    expect(marked).toEqual(expect.arrayContaining(expected))
  })
  test.each(shapes)('pushes pins to the left and rods to the right, both ways (%s)', (shape) => {
    for (const pass of [1, 2]) {
      const state = stateOf([], pass, 100, { card: [0xffffff] })
      const still = drawn(chain, stateOf(['belt.off'], pass, 100, { card: [0xffffff] }), shape)
      const sheet = drawn(chain, state, shape)
      const pushed = [...state.frame.rockerOuts.keys()].filter((n) => state.frame.rockerOuts[n]! > 0)
      expect(pushed.length).toBeGreaterThan(1)
      for (const n of pushed) {
        const moved = (part: string): number =>
          leftOf(sheet.querySelector(`.${part}[data-part$=".${n + 1}"]`)) -
          leftOf(still.querySelector(`.${part}[data-part$=".${n + 1}"]`))
        expect(moved('pin')).toBeCloseTo(-state.frame.pinLeans[n]! * perMm(layouts[shape]), 0)
        expect(moved('rod')).toBeCloseTo(state.frame.rockerOuts[n]! * perMm(layouts[shape]), 0)
      }
    }
  })
  test('lights the way of a push from the hole to the needle, and only while there is a push', () => {
    const way = (at: number, faults: readonly string[] = []): string =>
      drawn(chain, stateOf(faults, 5, at, { card: [0xffffff] }), 'wide')
        .querySelector('.push')
        ?.getAttribute('d') ?? ''
    expect(way(100)).not.toBe('')
    const blank = drawn(chain, stateOf([], 5, 100, { card: [0] }), 'wide').querySelector('.push')
    expect(blank?.getAttribute('d')).toBe('')
    const dead = drawn(chain, stateOf(['strip.1.seized'], 5, 100, { card: [0xffffff] }), 'wide')
    expect(dead.querySelector('.lost')?.getAttribute('d')).not.toBe('')
  })
})

describe('the window of the bed', () => {
  test('always holds the carriage’s presser, at every place and both ways', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 211, noNaN: true }),
        fc.constantFrom(1 as const, -1 as const),
        (x, way) => {
          for (const layout of Object.values(layouts)) {
            const from = windowFrom(layout, x, way)
            expect(x - from).toBeGreaterThanOrEqual(0)
            expect(x - from).toBeLessThanOrEqual(layout.needles)
          }
        },
      ),
    )
  })
  test('the map’s places and the bed’s needles turn into each other', () => {
    for (const layout of Object.values(layouts))
      for (const index of [-12, 0, 99.5, 150, 211])
        expect(mapNeedle(layout, mapX(layout, index))).toBeCloseTo(index, 9)
  })
})

describe('parts in the picture', () => {
  test('are found at the middle of their own boxes', () => {
    for (const shape of shapes) {
      const layout = layouts[shape]
      const { frame } = stateOf([], 1, 110.5)
      const from = windowFrom(layout, 110.5, 1)
      for (const part of partRows(layout, from, wholeBed).flat()) {
        const box = boxOf(layout, from, frame, part)
        if (!box) throw new Error(part)
        const hit = partAt(layout, from, frame, box.x + box.width / 2, box.y + box.height / 2)
        const under = ['sweep', 'presser', 'gate.1', 'gate.2']
        if (hit?.part !== part) expect(under).toContain(hit?.part)
      }
    }
  })
  test('a place on the card names its hole, rows to come above the one read', () => {
    const layout = layouts.wide
    const { frame } = stateOf([], 2, 150)
    const at = (column: number, rowsUp: number) =>
      partAt(
        layout,
        100,
        frame,
        layout.reader + (column - 0.5) * layout.pitch,
        layout.cardRow - rowsUp * layout.rowSpacing,
      )
    expect(at(3, 0)).toEqual({ part: 'card', hole: { row: 2, column: 3 } })
    expect(at(24, 1)).toEqual({ part: 'card', hole: { row: 3, column: 24 } })
  })
  test('nothing is found beside the bed and the reader', () => {
    const { frame } = stateOf([], 1, 110)
    expect(partAt(layouts.wide, 80, frame, 20, 60)).toBe(null)
    expect(partAt(layouts.wide, 80, frame, 500, layouts.wide.map)).toBe(null)
  })
  test('a needle out of the window has no box', () => {
    const { frame } = stateOf([], 1, 110)
    expect(boxOf(layouts.wide, 80, frame, `needle.${needleName(toNeedle(5))}`)).toBe(null)
    expect(needleX(layouts.wide, 80, 80)).toBe(layouts.wide.left)
  })
})
