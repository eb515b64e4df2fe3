import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as pins } from '@/drawings/pins/figure.ts'
import { columnX, firstColumn, layouts, levelY, planY, rightOf } from '@/drawings/pins/layout.ts'
import { spread } from '@/drawings/pins/levels.ts'
import { drawnEdge } from '@/drawings/pins/section.ts'
import { leanAngle, lens, pinLength } from '@/drawings/pins/shapes.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { holeNow, misplacement } from '@/mechanism/pin.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { millimetres } from '@/words/lists.ts'
import { nearestHeights } from '@/words/figures/pins.ts'
import { pointsOf, spanOf } from './path-points.ts'
import { drawn, expectSameOverAll, expectSound, type State, stateOf, states, textsOf } from './redraw.ts'

const numbersOf = (text: string | null | undefined): number[] =>
  [...(text ?? '').matchAll(/-?[\d.]+/g)].map(Number)

interface Drawn {
  readonly column: number
  readonly x: number
  readonly group: Element
}

/** The columns drawn in the section. */
const columnsOf = (sheet: SVGSVGElement): Drawn[] =>
  [...sheet.querySelectorAll('.columns > .column')].flatMap((group) => {
    if (group.getAttribute('display') === 'none') return []
    const part = group.querySelector('.feeler')!.getAttribute('data-part')!
    return [
      { column: Number(part.slice('pin.'.length)), x: numbersOf(group.getAttribute('transform'))[0]!, group },
    ]
  })

/** Height of a drawn pin's highest point above the pivots and how far that point is to the right of them, in pixels. */
const tipOf = (group: Element): { height: number; aside: number } => {
  const degrees = numbersOf(group.querySelector('.leaning')!.getAttribute('transform'))[0]!
  const corners = pointsOf(group.querySelector('.feeler'))
  const angle = (degrees * Math.PI) / 180
  const dome = -Math.min(...corners.map(([, y]) => y))
  const radius = -Math.min(...corners.map(([x]) => x))
  return { height: dome * Math.cos(angle) + radius, aside: dome * Math.sin(angle) }
}

describe.each(shapes)('the %s figure of the pins', (shape) => {
  const layout = layouts[shape]

  test('is the same however it came to its state', () => expectSameOverAll(pins, shape))
  test('has a number wherever one is due', () => expectSound(pins, shape))

  test.each(states)('draws each pin as high and as far aside as the model has it, state %#', (state) => {
    const { frame } = state
    const drawnColumns = columnsOf(drawn(pins, state, shape))
    expect(drawnColumns.length).toBeGreaterThanOrEqual(layout.columns)
    for (const { column, group } of drawnColumns) {
      const { height, aside } = tipOf(group)
      expect(height / layout.perMm).toBeCloseTo(frame.pinHeights[column - 1]!, 1)
      expect(aside / layout.perMm).toBeCloseTo(frame.pass.way * frame.pinLeans[column - 1]!, 1)
    }
  })

  test.each(states)('lowers each rod by what its rocker gives, state %#', (state) => {
    for (const { column, group } of columnsOf(drawn(pins, state, shape))) {
      const [, down] = numbersOf(group.querySelector('.rod-place')!.getAttribute('transform'))
      expect(down! / layout.perMm).toBeCloseTo(state.frame.rockerOuts[column - 1]!, 1)
    }
  })

  test.each(states)(
    'puts the sweep’s edge where it is, and its middle over its column, state %#',
    (state) => {
      const { frame } = state
      const tooth = drawn(pins, state, shape).querySelector('.sweep-tooth')
      const edge = drawnEdge(frame.condition.sweepEdge)
      expect(spanOf(tooth, 1).most).toBeCloseTo(levelY(layout, Math.min(edge, 3.75)), 1)
      const middle = columnX(layout, firstColumn(layout, frame.sweepAt), frame.sweepAt)
      const corners = pointsOf(tooth).filter(([x]) => Math.abs(x - middle) < 8 * layout.perMm)
      expect((corners[0]![0] + corners[1]![0]) / 2).toBeCloseTo(middle, 0)
    },
  )

  test.each(states)('lays each hole where the card has it, state %#', (state) => {
    const { condition, pass } = state.frame
    for (const group of drawn(pins, state, shape).querySelectorAll('.plan-column')) {
      if (group.getAttribute('display') === 'none') continue
      const opening = group.querySelector('.opening')
      const [x] = numbersOf(group.getAttribute('transform'))
      const first = firstColumn(layout, state.frame.sweepAt)
      const column = Math.round(first - 0.5 + (x! - layout.left) / (dimensions.pitch * layout.perMm))
      const isHole = pass.row !== null && holeNow(condition, pass.row, toColumn(column))
      expect(['hole', 'torn'].includes(opening!.getAttribute('data-look')!)).toBe(isHole)
      if (!isHole) continue
      const [left, y] = pointsOf(opening)[0]!
      const off = Math.hypot(left / layout.perMm + dimensions.hole / 2, y / layout.perMm)
      expect(off).toBeCloseTo(misplacement(condition, toColumn(column)), 1)
    }
  })

  test.each(states)('dimensions both margins with the model’s own numbers, state %#', (state) => {
    const { high, low } = nearestHeights(state.frame)
    const edge = state.frame.condition.sweepEdge
    const words = textsOf(drawn(pins, state, shape), '.gap-words text').join(' ')
    if (high !== null) expect(words).toContain(millimetres(Math.abs(high - edge)))
    if (low !== null) expect(words).toContain(millimetres(Math.abs(edge - low)))
  })

  test('takes the carriage to the column that is pointed at', () => {
    for (const { frame } of states) {
      const first = firstColumn(layout, frame.sweepAt)
      const under = columnX(layout, first, frame.sweepAt)
      if (under > rightOf(layout) || under < layout.left) continue
      expect(pins.placeAt!(shape, under, planY(layout), frame)).toBeCloseTo(frame.x, 6)
      expect(pins.placeAt!(shape, under, 0, frame)).toBeNull()
    }
  })
})

describe('the pins’ shapes', () => {
  test('a pin keeps its height while it leans, by just the push', () => {
    for (const lean of [-2, -0.4, 0, 1.3, 2]) {
      const angle = leanAngle(dimensions.pinHigh, lean)
      const dome = pinLength(dimensions.pinHigh, angle) - dimensions.pin / 2
      expect(dome * Math.cos(angle) + dimensions.pin / 2).toBeCloseTo(dimensions.pinHigh, 9)
      expect(dome * Math.sin(angle)).toBeCloseTo(lean, 9)
    }
  })
  test('a leaning pin clears the edge of a hole that lies true, at the card’s upper side', () => {
    const angle = leanAngle(dimensions.pinHigh, dimensions.sweepThrow)
    const edge = (dimensions.pinLow + 0.2) * Math.tan(angle) + 0.35 / Math.cos(angle)
    expect(edge).toBeLessThan(dimensions.hole / 2)
  })
  test('a pin shows whole through its hole, in part at its edge, and not at all beyond it', () => {
    expect(lens([0, 0], 2, [1, 1], 5)).toMatch(/a2,2/)
    expect(lens([0, 0], 2, [9, 0], 5)).toBe('')
    expect(lens([0, 0], 2, [4, 0], 5)).toMatch(/^M[-\d.,]+A2,2 0 \d 1 [-\d.,]+A5,5/)
  })
  test('words are pressed apart to the gap asked for, in their own order', () => {
    const placed = spread([10, 12, 40], 14)
    expect(placed[1]! - placed[0]!).toBeCloseTo(14, 6)
    expect(placed[2]).toBe(40)
    expect(placed[0]! + placed[1]!).toBeCloseTo(22, 6)
  })
})

describe('what the pins’ figure makes plain', () => {
  const look = (state: State, part: string): string | null =>
    drawn(pins, state, 'wide').querySelector(`[data-part="${part}"]`)?.getAttribute('data-look') ?? null

  test('without a card every pin stands high and no card is drawn', () => {
    const state = stateOf([], 1, 112.4, { card: null })
    const sheet = drawn(pins, state, 'wide')
    expect(sheet.querySelector('.card-cut')!.getAttribute('d')).toBe('')
    for (const { column } of columnsOf(sheet)) expect(look(state, `pin.${column}`)).not.toBe('low')
  })
  test('a hole out of place shows its pin stopped', () => {
    const sheet = drawn(pins, stateOf(['card.side=1.2'], 1, 104, { card: [0xffffff] }), 'wide')
    expect(sheet.querySelectorAll('.hidden-pin[data-look="stopped"]').length).toBeGreaterThan(3)
  })
  test('a worn sweep shows what is worn away', () => {
    const worn = (faults: string[]): string =>
      drawn(pins, stateOf(faults, 1, 104), 'wide')
        .querySelector('.sweep-worn')!
        .getAttribute('d')!
    expect(worn([])).toBe('')
    expect(worn(['sweep.worn=0.5'])).not.toBe('')
  })
})
