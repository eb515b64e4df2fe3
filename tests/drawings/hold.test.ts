import { describe, expect, test } from 'vitest'
import { catchOf } from '@/drawings/shared/detail/needle-state.ts'
import { shape as profile, tipAt } from '@/drawings/shared/detail/profile.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as hold } from '@/drawings/hold/figure.ts'
import { bedX, layouts, levelY, lift, viewedAt } from '@/drawings/hold/layout.ts'
import { needleIndex, needleName, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { presserOf } from '@/mechanism/condition.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { sinceLetGo } from '@/mechanism/frame.ts'
import { heldHeight } from '@/mechanism/gate.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { needleHeldUp } from '@/words/figures/hold.ts'
import { millimetres } from '@/words/lists.ts'
import { pointsOf, spanOf } from './path-points.ts'
import { drawn, expectSameOverAll, expectSound, stateOf, states, textsOf } from './redraw.ts'

/** A needle that is asked for in pass 17 and is caught on the sound machine. */
const asked = states[1]!.frame.pass.asked.indexOf('selected', 100)

describe.each(shapes)('the %s figure of the hold', (shape) => {
  const layout = layouts[shape]
  const up = layout.along * lift

  test('is the same however it came to its state', () => expectSameOverAll(hold, shape))
  test('has a number wherever one is due', () => expectSound(hold, shape))

  test.each(states)('draws each butt as far from the rest line as the model has it, state %#', (state) => {
    const plates = [...drawn(hold, state, shape).querySelectorAll('.section .plate')]
    expect(plates.length).toBeGreaterThan(1)
    for (const plate of plates) {
      if (plate.getAttribute('d') === '') continue
      const index = needleIndex(plate.getAttribute('data-part')!.slice('needle.'.length))!
      const height = (layout.rest - spanOf(plate, 1).least) / up
      expect(height).toBeCloseTo(state.frame.buttHeights[index]!, 2)
    }
  })

  test.each(states)('draws the presser as deep as the model dips, state %#', (state) => {
    const { condition, pass } = state.frame
    const body = drawn(hold, state, shape).querySelector('.section .presser-body')
    const dip = Math.max(0, presserOf(condition, pass.way))
    expect((spanOf(body, 1).most - layout.rest) / up).toBeCloseTo(dip, 1)
  })

  test.each([
    [[], 17],
    [['strip.4.seized'], 17],
    [['strip.2.over'], 18],
    [['catch.R5.broken'], 18],
  ])('moves the catch by the shift of its strip, with %j in pass %i', (faults, pass) => {
    for (let x = 98; x < 112; x += 0.27) {
      const state = stateOf(faults, pass, x)
      const { frame } = state
      const needle = needleHeldUp(frame)
      if (frame.condition.catchBroken[needle]) continue
      const finger = drawn(hold, state, shape).querySelector('.section .finger.shown')
      const middle = bedX(layout, viewedAt(x, 0, 199), needle)
      const { reach, tip, under } = catchOf(frame, toNeedle(needle))
      const nose = pointsOf(finger)[4]!
      expect((nose[0] - middle) / layout.along).toBeCloseTo(tipAt(reach, tip), 1)
      expect((layout.rest - nose[1]) / up).toBeCloseTo(under, 2)
      expect(under).toBe(heldHeight(frame.condition, toNeedle(needle)) - profile.spurDrop)
      const shift = frame.stripShifts[stripOfNeedle(toNeedle(needle), usualPlace) - 1]!
      const root = tipAt(reach, shift) - profile.nose - profile.finger
      expect(root).toBeLessThan(tipAt(reach, tip))
      const words = textsOf(drawn(hold, state, shape), '.labels text').join(' ')
      expect(words).toContain(shift > 0 ? `shift ${millimetres(shift)}` : 'no shift')
    }
  })

  test('lets a nose lie over the spur of a needle only where its butt is dipped or held', () => {
    for (let x = 80; x < 130; x += 0.13)
      for (const faults of [[], ['strip.4.slow'], ['strip.3.over'], ['presser.left.worn=0.8']]) {
        const { frame } = stateOf(faults, 18, x, { speed: 1200 })
        for (let index = Math.ceil(x) - 3; index <= x + 3; index++) {
          const { tip, under, reach } = catchOf(frame, toNeedle(index))
          const height = frame.buttHeights[index]!
          const spurTop = height - profile.spurDrop
          const noseTop = under + profile.tipThick + profile.slope * Math.max(0, tip - reach)
          const isOver = tip > reach && spurTop > under + 1e-6 && spurTop - profile.spurThick < noseTop - 1e-6
          expect(isOver, `${needleName(toNeedle(index))} at ${x}`).toBe(false)
        }
      }
  })

  test('holds a butt that is taken up to the first gate, with the nose over its spur', () => {
    for (let since = 0.3; since <= dimensions.gateLag; since += 0.1) {
      const state = stateOf([], 17, asked + since)
      const plate = drawn(hold, state, shape).querySelector(
        `.section .plate[data-part="needle.${needleName(toNeedle(asked))}"]`,
      )
      expect(plate?.classList.contains('held')).toBe(true)
      const { tip, reach, under } = catchOf(state.frame, toNeedle(asked))
      expect(tip).toBeGreaterThanOrEqual(reach)
      expect(state.frame.buttHeights[asked]! - profile.spurDrop).toBeCloseTo(under, 6)
    }
  })

  test('lets a butt go whose strip goes back before the first gate', () => {
    const faults = ['belt.timing=1.3']
    const keptFor = stateOf(faults, 17, asked).frame.pass.keptFor[asked]!
    expect(keptFor).toBeLessThan(dimensions.gateLag)
    const late = stateOf(faults, 17, asked + keptFor + 0.1)
    const { tip, reach } = catchOf(late.frame, toNeedle(asked))
    expect(tip).toBeLessThan(reach)
    const sheet = drawn(hold, stateOf(faults, 17, asked), shape)
    expect(textsOf(sheet, '.labels text')).toContain('let go too early')
    expect(textsOf(drawn(hold, stateOf([], 17, asked), shape), '.labels text')).not.toContain(
      'let go too early',
    )
  })

  test('draws the first gate as deep as the model has it, and aside where the carriage is not set to pattern', () => {
    const edge = (faults: readonly string[]): number =>
      (spanOf(drawn(hold, stateOf(faults, 17, asked), shape).querySelector('.gate-body'), 1).most -
        layout.rest) /
      up
    expect(edge([])).toBeCloseTo(dimensions.gate1, 1)
    expect(edge(['gate.1.low=0.5'])).toBeCloseTo(dimensions.gate1 + 0.5, 1)
    expect(edge(['carriage.plain'])).toBeLessThan(0)
    const plain = drawn(hold, stateOf(['carriage.plain'], 17, asked), shape)
    expect(plain.querySelector('.section .presser-body.aside')).not.toBeNull()
  })

  test('marks the moment at which the needle is', () => {
    const nowAt = (since: number): number => {
      const sheet = drawn(hold, stateOf([], 17, asked + since), shape)
      const frames = [...sheet.querySelectorAll('.still-frame')]
      expect(frames).toHaveLength(3)
      return frames.findIndex((frame) => frame.classList.contains('now'))
    }
    expect(nowAt(-0.4)).toBe(0)
    expect(nowAt(0)).toBe(0)
    expect(nowAt(0.3)).toBe(2)
    const seized = stateOf([`strip.${stripOfNeedle(toNeedle(asked), usualPlace)}.seized`], 17, asked + 0.3)
    expect(drawn(hold, seized, shape).querySelectorAll('.still-frame')[1]?.classList.contains('now')).toBe(
      true,
    )
  })

  test('shows a broken catch, a bent butt, a worn presser and a needle without a butt', () => {
    const name = needleName(toNeedle(asked))
    const with_ = (fault: string): SVGSVGElement => drawn(hold, stateOf([fault], 17, asked), shape)
    expect(with_(`catch.${name}.broken`).querySelector('.section .finger.shown.broken')).not.toBeNull()
    expect(with_(`catch.${name}.broken`).querySelector('.section .gone[d^="M"]')).not.toBeNull()
    expect(with_(`needle.${name}.bent`).querySelector('.section .plate.shown[fill^="url"]')).not.toBeNull()
    expect(with_('presser.right.worn=0.8').querySelector('.worn-away[d^="M"]')).not.toBeNull()
    expect(with_(`needle.${name}.gone`).querySelector('.section .plate.shown')?.getAttribute('d')).toBe('')
    expect(drawn(hold, stateOf([], 17, asked), shape).querySelector('.section .gone[d^="M"]')).toBeNull()
  })
})

test('the view stands still while the presser lets go, and goes on between needles without a jump', () => {
  expect(viewedAt(100.2, 0, 199)).toBe(100)
  expect(viewedAt(99.8, 0, 199)).toBe(100)
  expect(viewedAt(-12, 0, 199)).toBe(0)
  expect(viewedAt(211, 90, 109)).toBe(109)
  for (let x = 99; x < 103; x += 0.01) {
    const step = viewedAt(x + 0.01, 0, 199) - viewedAt(x, 0, 199)
    expect(step).toBeGreaterThanOrEqual(0)
    expect(step).toBeLessThan(0.05)
  }
})

test('the words say what is drawn', () => {
  const { run, frame } = stateOf([], 17, asked + 0.3)
  expect(sinceLetGo(frame.x, toNeedle(asked), frame.pass.way)).toBeCloseTo(0.3)
  const words = hold.describe(run, frame)
  expect(words).toContain(`Needle ${needleName(toNeedle(asked))}`)
  expect(words).toContain('the catch holds the butt, 0.9\u00a0mm down, until the first gate')
  expect(levelY(layouts.wide, 0)).toBe(layouts.wide.rest)
})
