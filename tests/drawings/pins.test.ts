import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as pins } from '@/drawings/pins/figure.ts'
import { columnX, firstColumn, layouts, levelY, planY, rightOf } from '@/drawings/pins/layout.ts'
import { spread } from '@/drawings/pins/levels.ts'
import { drawnEdge } from '@/drawings/pins/section.ts'
import { lens, pivotAside } from '@/drawings/pins/shapes.ts'
import { forwardOf, wedgeEnds } from '@/drawings/shared/wedge.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { holeNow, misplacement } from '@/mechanism/pin.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { millimetres } from '@/words/lists.ts'
import { nearestHeights } from '@/words/figures/pins.ts'
import { sweepShown } from '@/words/figures/sweep.ts'
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

/** Height of a drawn leg's highest point above the top plate and how far it is to the right of its place at rest, in pixels. */
const tipOf = (group: Element): { height: number; aside: number } => {
  const leg = group.querySelector('.feeler')
  const radius = -spanOf(leg, 0).least
  return {
    height: radius - spanOf(leg, 1).least,
    aside: numbersOf(group.querySelector('.leg-place')!.getAttribute('transform'))[0]!,
  }
}

describe.each(shapes)('the %s figure of the pins', (shape) => {
  const layout = layouts[shape]

  test('is the same however it came to its state', () => expectSameOverAll(pins, shape))
  test('has a number wherever one is due', () => expectSound(pins, shape))

  test.each(states)(
    'draws each pin as high and as far to the left as the model has it, state %#',
    (state) => {
      const { frame } = state
      const drawnColumns = columnsOf(drawn(pins, state, shape))
      expect(drawnColumns.length).toBeGreaterThanOrEqual(layout.columns)
      for (const { column, group } of drawnColumns) {
        const { height, aside } = tipOf(group)
        expect(height / layout.perMm).toBeCloseTo(frame.pinHeights[column - 1]!, 1)
        expect(aside / layout.perMm).toBeCloseTo(-frame.pinLeans[column - 1]!, 1)
      }
    },
  )

  test.each(states)(
    'moves each rod to the right by what its rocker gives, and its top to the left, state %#',
    (state) => {
      for (const { column, group } of columnsOf(drawn(pins, state, shape))) {
        const out = state.frame.rockerOuts[column - 1]!
        const rest = pivotAside(state.frame.condition.lost[column - 1]!)
        const [rod] = pointsOf(group.querySelector('.rocker-rod'))
        expect(rod![0] / layout.perMm - rest).toBeCloseTo(out, 1)
        if (state.frame.condition.rockerDead[column - 1] === 1) continue
        const [left, right] = pointsOf(group.querySelector('.rocker-arm'))
        expect((left![0] + right![0]) / 2 / layout.perMm - rest).toBeCloseTo(-out, 1)
      }
    },
  )

  test.each(states)('puts each front leg in its slanted slot where the wedge has it, state %#', (state) => {
    const groups = [...drawn(pins, state, shape).querySelectorAll('.front-column')]
    for (const { column, x } of columnsOf(drawn(pins, state, shape))) {
      const group = groups.find((one) => Math.abs(numbersOf(one.getAttribute('transform'))[0]! - x) < 0.01)
      const [left, y] = pointsOf(group?.querySelector('.front-leg'))[0]!
      const push = state.frame.pinLeans[column - 1]!
      expect(left / layout.perMm + dimensions.pin / 2).toBeCloseTo(-push, 1)
      expect(y / layout.perMm).toBeCloseTo(forwardOf(push), 1)
    }
  })

  test.each(states)('puts the sweep’s edge where it is, and its wedge at its column, state %#', (state) => {
    const { frame } = state
    const tooth = drawn(pins, state, shape).querySelector('.sweep-tooth')
    const edge = drawnEdge(frame.condition.sweepEdge)
    expect(spanOf(tooth, 1).most).toBeCloseTo(levelY(layout, Math.min(edge, 3.75)), 0)
    const middle = columnX(layout, firstColumn(layout, frame.sweepAt), frame.sweepAt)
    for (const end of [wedgeEnds.left, wedgeEnds.right])
      expect(pointsOf(tooth).some(([x]) => Math.abs(x - middle - end * layout.perMm) < 0.1)).toBe(true)
  })

  test.each(states)('puts each hole where the card has it, state %#', (state) => {
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

  test('one pin from the side has both legs as high as the model has it, the back one under the card', () => {
    for (const state of states) {
      const sheet = drawn(pins, state, 'wide')
      const wire = sheet.querySelector('.profile .feeler')
      const column = sweepShown(state.frame).column
      expect(wire?.getAttribute('data-part')).toBe(`pin.${column}`)
      const height = (layouts.wide.datum - spanOf(wire, 1).least) / layouts.wide.perMm + dimensions.pin / 2
      expect(height).toBeCloseTo(state.frame.pinHeights[column - 1]!, 1)
      expect(sheet.querySelector('.card-cut')!.getAttribute('d') === '').toBe(state.frame.pass.row === null)
    }
  })
  test('with the belt not engaged the sweep stands still, clear of all pins', () => {
    const at = (x: number): string | null =>
      drawn(pins, stateOf(['belt.off'], 1, x), 'wide')
        .querySelector('.sweep-tooth')!
        .getAttribute('d')
    expect(at(100)).toBe(at(107))
    const sheet = drawn(pins, stateOf(['belt.off'], 1, 100, { card: null }), 'wide')
    expect(spanOf(sheet.querySelector('.sweep-tooth'), 1).most).toBeLessThan(
      levelY(layouts.wide, dimensions.pinHigh),
    )
    expect(sheet.querySelector('.feeler[data-look="pushed"]')).toBeNull()
  })
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
