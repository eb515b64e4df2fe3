import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as handBar } from '@/drawings/hand-bar/figure.ts'
import { figure as handPin } from '@/drawings/hand-pin/figure.ts'
import { layouts as pinLayouts } from '@/drawings/hand-pin/layout.ts'
import { figure as handStrip } from '@/drawings/hand-strip/figure.ts'
import { layouts as stripLayouts } from '@/drawings/hand-strip/layout.ts'
import { pinFelt, rodFelt, stripFelt } from '@/mechanism/by-hand.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { toColumn, toStrip } from '@/mechanism/indices.ts'
import { spanOf } from './path-points.ts'
import { drawn, expectSameOverAll, expectSound, stateOf, textsOf } from './redraw.ts'

const words = (sheet: SVGSVGElement): string => textsOf(sheet, '.labels text').join(' ')

describe.each([handStrip, handPin, handBar])('the figure $title', (figure) => {
  test.each(shapes)('is the same however it came to its state, and sound, %s', (shape) => {
    expectSameOverAll(figure, shape)
    expectSound(figure, shape)
  })
  test.each(shapes)('shows a hand, the way it goes, and says what is taken off, %s', (shape) => {
    const sheet = drawn(figure, stateOf([], 1, 111), shape)
    expect(sheet.querySelectorAll('.hand-skin').length).toBeGreaterThan(0)
    expect(sheet.querySelectorAll('.hand-way').length).toBeGreaterThan(0)
    expect(words(sheet)).toMatch(/cover off|Nothing opened/)
  })
})

describe.each(shapes)('a strip by hand, %s', (shape) => {
  const layout = stripLayouts[shape]
  const barOf = (sheet: SVGSVGElement, strip: number) =>
    spanOf(sheet.querySelector(`.plan [data-part="strip.${strip}"]`), 0).least
  test('goes to the right under the finger as far as the model lets it, and comes back', () => {
    const sheet = drawn(handStrip, stateOf(['strip.4.seized'], 1, 111), shape)
    expect(barOf(sheet, 4)).toBeCloseTo(layout.end, 0)
    expect(words(sheet)).toContain('does not move')
    const sound = drawn(handStrip, stateOf([], 1, 111), shape)
    expect((barOf(sound, 4) - layout.end) / layout.perMm).toBeCloseTo(1.8, 1)
    for (const strip of [1, 2, 3, 5, 6, 7, 8]) expect(barOf(sound, strip)).toBeCloseTo(layout.end, 0)
    const over = drawn(handStrip, stateOf(['strip.6.over', 'strip.4.seized'], 1, 111), shape)
    expect((barOf(over, 6) - layout.end) / layout.perMm).toBeCloseTo(1.8, 1)
    expect(words(over)).toContain('stays over')
  })
  test('says of each strip what a hand feels, a slow one by its time', () => {
    const sheet = drawn(handStrip, stateOf(['strip.1.slow'], 1, 111), shape)
    expect(textsOf(sheet, '.labels text').filter((text) => text === 'springs back at once')).toHaveLength(7)
    // 300 ms times the logarithm of 2.4 over 0.6.
    expect(words(sheet)).toContain('creeps back: 0.4\u00a0s')
  })
  test('keeps the butt pressed down until it is let go, unless its catch is gone', () => {
    expect(words(drawn(handStrip, stateOf([], 1, 111), shape))).toMatch(/Finger off: ?it stays/)
    const broken = words(drawn(handStrip, stateOf(['catch.R12.broken'], 1, 111), shape))
    expect(broken).toMatch(/Finger off: ?it comes up/)
    expect(broken).toContain('catch broken')
    const seized = words(drawn(handStrip, stateOf(['strip.4.seized'], 1, 111), shape))
    expect(seized).toMatch(/Finger off: ?it comes up/)
  })
})

describe.each(shapes)('a pin by hand, %s', (shape) => {
  const { side, front } = pinLayouts[shape]
  const heightOf = (sheet: SVGSVGElement, selector: string): number =>
    (side.datum - spanOf(sheet.querySelector(selector), 1).least) / side.perMm
  test('is pressed down from where it was, as the model has it', () => {
    const sheet = drawn(handPin, stateOf(['pin.5.sticky=0.5'], 1, 111), shape)
    expect(heightOf(sheet, '.side .felt')).toBeCloseTo(dimensions.pinLow - dimensions.pin / 2, 0)
    expect(words(sheet)).toContain('at 50\u00a0% of the turns')
    expect(words(drawn(handPin, stateOf(['pin.5.low'], 1, 111), shape))).toContain('and stays down')
    expect(words(drawn(handPin, stateOf(['pin.5.high'], 1, 111), shape))).toContain('it is stuck up')
  })
  test('takes its strip along to the right, as far as its rocker gives', () => {
    const rightOf = (faults: readonly string[]): number => {
      const sheet = drawn(handPin, stateOf(faults, 1, 111), shape)
      return spanOf([...sheet.querySelectorAll('.front .hand-part.felt')].at(-1), 0).least
    }
    expect((rightOf(['pin.5.sticky=0.5']) - front.left) / front.perMm).toBeCloseTo(1.8, 1)
    expect((rightOf(['rocker.5.worn=0.8']) - front.left) / front.perMm).toBeCloseTo(1, 1)
    expect(rightOf(['rocker.5.dead'])).toBeCloseTo(front.left, 1)
  })
})

test('the bar’s padding is this machine’s own', () => {
  const nowAt = (faults: readonly string[]): number =>
    [...drawn(handBar, stateOf(faults, 1, 111), 'wide').querySelectorAll('.still-frame')].findIndex((frame) =>
      frame.classList.contains('now'),
    )
  expect([nowAt([]), nowAt(['retainer.worn=12'])]).toEqual([0, 1])
})

describe('what a hand feels', () => {
  const { condition } = stateOf(
    ['strip.2.slow=120', 'strip.5.over', 'pin.9.high', 'rocker.3.worn=0.5'],
    1,
    100,
  ).frame
  test('of a strip goes by its spring', () => {
    expect(stripFelt(condition, toStrip(1)).backIn).toBeCloseTo(4 * Math.log(4), 9)
    expect(stripFelt(condition, toStrip(2)).backIn).toBeCloseTo(120 * Math.log(4), 9)
    expect(stripFelt(condition, toStrip(5))).toEqual({
      before: 1.8,
      pushed: 1.8,
      after: 1.8,
      backIn: Infinity,
    })
  })
  test('of a pin and its rocker goes by what is wrong with them', () => {
    expect(pinFelt(condition, toColumn(9))).toEqual({ before: 3, pressed: 3, stays: 0 })
    expect(pinFelt(condition, toColumn(1))).toEqual({ before: 3, pressed: 1.2, stays: 0 })
    expect(rodFelt(condition, toColumn(3))).toBeCloseTo(1.3, 9)
    expect(rodFelt(condition, toColumn(1))).toBeCloseTo(1.8, 9)
  })
})
