import { describe, expect, test } from 'vitest'
import { figure as card } from '@/drawings/card/figure.ts'
import { bedX, columnX, layouts, perMm, rowSpacing, rowY } from '@/drawings/card/layout.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import type { FigureOptions } from '@/drawings/shared/figure-contract.ts'
import { sideOfTurn } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { holeNow } from '@/mechanism/pin.ts'
import { rowRead, stepsAtTurn } from '@/mechanism/turn.ts'
import { toColumn } from '@/mechanism/indices.ts'
import { describeCard, rowSeen, rowsBetween, turnShown, turnWords } from '@/words/figures/card.ts'
import { type Point, pointsOf, spanOf } from './path-points.ts'
import {
  drawn,
  emptySheet,
  expectSameOverAll,
  expectSound,
  mixedCard,
  type State,
  stateOf,
  states,
  textsOf,
} from './redraw.ts'

const numbersOf = (text: string | null | undefined): number[] =>
  [...(text ?? '').matchAll(/-?[\d.]+/g)].map(Number)

/** Middles of the holes drawn, where they lie in the picture. */
const holesOf = (sheet: SVGSVGElement, radius: number): Point[] => {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = numbersOf(
    sheet.querySelector('.card .rolling')!.getAttribute('transform')!.replace('matrix', ''),
  )
  return [...sheet.querySelectorAll('.punch:is([data-mark="hole"], [data-mark="torn"])')]
    .flatMap((path) => [...(path.getAttribute('d') ?? '').matchAll(/M(-?[\d.]+),(-?[\d.]+)a/g)])
    .map((match): Point => {
      const [x, y] = [Number(match[1]) + radius, Number(match[2])]
      return [a * x + c * y + e, b * x + d * y + f]
    })
}

const drawnWith = ({ run, frame }: State, options: Partial<FigureOptions>): SVGSVGElement => {
  const sheet = emptySheet()
  card.draw(sheet, run, frame, { shape: 'wide', prefix: 'test', ...options })
  return sheet
}

describe.each(shapes)('the %s figure of the card', (shape) => {
  const layout = layouts[shape]
  const radius = (dimensions.hole / 2) * perMm(layout)

  test('is the same however it came to its state', () => expectSameOverAll(card, shape))
  test('has a number wherever one is due', () => expectSound(card, shape))

  test.each(states)('shows the holes of the row being read where the card has them, state %#', (state) => {
    const { condition, pass } = state.frame
    if (pass.row === null) return
    const holes = holesOf(drawn(card, state, shape), Math.round(radius * 10) / 10)
    for (let column = 1; column <= dimensions.columns; column++) {
      const along = condition.cardSkew * (column - (dimensions.columns + 1) / 2)
      const x = columnX(layout, column) + condition.cardSide * perMm(layout)
      const y = layout.reading + along * perMm(layout)
      const found = holes.some((hole) => Math.hypot(hole[0] - x, hole[1] - y) < 0.5)
      expect(found, `column ${column}`).toBe(holeNow(condition, pass.row, toColumn(column)))
    }
  })

  test.each(states)('names the row being read and the row one sees, state %#', (state) => {
    const { row } = state.frame.pass
    if (row === null) return
    const words = textsOf(drawn(card, state, shape), '.words text').join(' | ')
    expect(words).toContain(`row ${row}`)
    expect(words).toContain(`row ${rowSeen(row, mixedCard.length)}`)
  })

  test.each(states)('has the carriage at its place, state %#', (state) => {
    const line = drawn(card, state, shape).querySelector('.index-line')
    expect(pointsOf(line)[0]![0]).toBeCloseTo(bedX(layout, state.frame.x), 1)
  })

  test.each(states)('has the turn marks 12 needles beyond the last needles in use, state %#', (state) => {
    const { first, last } = state.frame.condition.bed
    const { least, most } = spanOf(drawn(card, state, shape).querySelector('.turn-mark'), 0)
    expect(least).toBeCloseTo(bedX(layout, first - dimensions.turnMark), 1)
    expect(most).toBeCloseTo(bedX(layout, last + dimensions.turnMark), 1)
  })

  test('gives back the place of the carriage that is pointed at', () => {
    for (const { frame } of states) {
      expect(card.placeAt!(shape, bedX(layout, frame.x), layout.bedTop + 5, frame)).toBeCloseTo(frame.x, 6)
      expect(card.placeAt!(shape, bedX(layout, frame.x), 0, frame)).toBeNull()
    }
  })
})

describe('the turn as drawn', () => {
  const turned = (faults: readonly string[], pass: number): State =>
    stateOf(faults, pass, pass % 2 === 1 ? -12 : 211)
  const rolled = (state: State, roll: number): number =>
    numbersOf(drawnWith(state, { roll }).querySelector('.card .rolling')!.getAttribute('transform')).at(-1)!

  test.each([
    [[], 1],
    [['pawl.double'], 2],
    [['card.locked'], 0],
    [['pawl.right'], 0],
    [['turn.short.4'], 0],
  ])('rolls the card by as many rows as the turn steps it, with %j', (faults, steps) => {
    const state = turned(faults, 4)
    expect(stepsAtTurn(state.run.condition, 4)).toBe(steps)
    expect(rolled(state, 0) - rolled(state, 1)).toBeCloseTo(steps * rowSpacing(layouts.wide), 0)
  })
  test('drops the pins before the card moves, and raises them after it has stopped', () => {
    const state = turned([], 4)
    let last = rolled(state, 1)
    for (let roll = 1; roll >= 0; roll -= 0.02) {
      const sheet = drawnWith(state, { roll })
      const at = rolled(state, roll)
      const through = pointsOf(sheet.querySelector('.pin-end[data-kind="through"]')).length
      if (Math.abs(at - last) > 0.01) expect(through).toBe(0)
      last = at
    }
    expect(
      pointsOf(drawnWith(state, { roll: 0 }).querySelector('.pin-end[data-kind="through"]')).length,
    ).toBeGreaterThan(0)
  })
  test('lights the rod of the pawl that acts, from its own mark, and none where none acts', () => {
    const amber = (state: State): Element => drawn(card, state, 'wide').querySelector('.linkage > .amber')!
    for (const pass of [2, 3, 4, 5]) {
      const start = pointsOf(amber(turned([], pass)))[0]![0]
      const mark = sideOfTurn(pass) === 'right' ? 211 : -12
      expect(start).toBeCloseTo(bedX(layouts.wide, mark), 1)
    }
    expect(amber(turned(['pawl.right'], 4)).getAttribute('d')).toBe('')
    expect(amber(turned(['turn.short.4'], 4)).getAttribute('d')).toBe('')
    expect(amber(stateOf([], 4, 100)).getAttribute('d')).toBe('')
  })
  test('a dead pawl is drawn broken, the other one is not', () => {
    const sheet = drawn(card, stateOf(['pawl.left'], 4, 100), 'wide')
    expect(sheet.querySelector('[data-part="pawl.left"]')!.getAttribute('data-look')).toBe('broken')
    expect(sheet.querySelector('[data-part="pawl.right"]')!.getAttribute('data-look')).toBe('')
  })
  test('says what the turn does, as the model has it', () => {
    for (const faults of [
      [],
      ['pawl.left'],
      ['pawl.right'],
      ['pawl.double'],
      ['card.locked'],
      ['turn.short.5'],
    ])
      for (const pass of [1, 2, 3, 4, 5])
        for (const at of [-12, 100, 211]) {
          const { frame } = stateOf(faults, pass, at)
          const turn = turnShown(frame)
          expect(turnWords(frame)).toContain(`row ${rowRead(frame.condition, turn) ?? 0}`)
          const steps = stepsAtTurn(frame.condition, turn)
          expect(/ again\.$/.test(turnWords(frame))).toBe(steps === 0)
        }
  })
  test('says that turning short leaves the row as it is', () => {
    const { run, frame } = stateOf([], 1, 205)
    expect(describeCard(run, frame)).toContain('Turn before it and row 1 stays.')
    expect(drawn(card, { run, frame }, 'wide').querySelector('.short-zone')!.getAttribute('d')).not.toBe('')
  })
  test('the row one sees wraps round the loop', () => {
    expect(rowSeen(1, 32)).toBe(1 + rowsBetween)
    expect(rowSeen(30, 32)).toBe(3)
    expect(rowSeen(1, 1)).toBe(1)
    expect(rowY(layouts.wide, rowsBetween)).toBeLessThan(layouts.wide.slot)
    expect(rowY(layouts.wide, rowsBetween - 1)).toBeGreaterThan(layouts.wide.slot)
  })
})
