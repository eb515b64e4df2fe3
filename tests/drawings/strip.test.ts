import { toNeedle, toStrip } from '@/mechanism/indices.ts'
import { describe, expect, test } from 'vitest'
import { catchOf } from '@/drawings/shared/detail/needle-state.ts'
import { shape as profile, tipAt } from '@/drawings/shared/detail/profile.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as strip } from '@/drawings/strip/figure.ts'
import { alongOf, bedX, layouts, lift } from '@/drawings/strip/layout.ts'
import { needleIndex, needlesOfStrip, stripOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import type { Run } from '@/mechanism/pass.ts'
import type { Frame } from '@/mechanism/frame.ts'
import { leftOver, needlesLarge, stripShown, underPresser } from '@/words/figures/strip.ts'
import { millimetres } from '@/words/lists.ts'
import { pointsOf, spanOf } from './path-points.ts'
import { drawn, expectSameOverAll, expectSound, stateOf, states, textsOf } from './redraw.ts'

const asked = states[1]!.frame.pass.asked.indexOf('selected', 100)
const shiftOf = (run: Run, frame: Frame): number => frame.stripShifts[stripShown(run, frame) - 1]!

describe.each(shapes)('the %s figure of one strip', (shape) => {
  const layout = layouts[shape]
  const along = alongOf(layout)

  test('is the same however it came to its state', () => expectSameOverAll(strip, shape))
  test('has a number wherever one is due', () => expectSound(strip, shape))

  test.each(states)('moves all the catches by one shift, and the strip with them, state %#', (state) => {
    const { run, frame } = state
    const sheet = drawn(strip, state, shape)
    const catches = [...sheet.querySelectorAll('.small-catch')]
    const needles = needlesOfStrip(stripShown(run, frame), frame.condition)
    expect(catches).toHaveLength(dimensions.needles / dimensions.strips)
    const shift = shiftOf(run, frame)
    const root = (tipAt(frame.condition.reach, shift) - profile.nose - profile.finger) * along
    for (const [n, one] of catches.entries())
      expect(pointsOf(one)[0]![0] - bedX(layout, needles[n]!)).toBeCloseTo(root, 0)
    const bar = sheet.querySelector('.machine .long-bar')
    expect((spanOf(bar, 0).least - layout.left) / along).toBeCloseTo(shift, 1)
  })

  test.each(states)('draws each butt as far from the rest line as the model has it, state %#', (state) => {
    const butts = [...drawn(strip, state, shape).querySelectorAll('.machine .small-butt')]
    for (const butt of butts) {
      const index = needleIndex(butt.getAttribute('data-part')!.slice('needle.'.length))!
      const height = (layout.rest - spanOf(butt, 1).least) / (along * lift)
      expect(height).toBeCloseTo(state.frame.buttHeights[index]!, 1)
    }
  })

  test('spans one butt of the strip at most with its presser, wherever the carriage is', () => {
    for (let x = -12; x <= 211; x += 1.7) {
      const state = stateOf([], 17, x)
      const { least, most } = spanOf(drawn(strip, state, shape).querySelector('.small-presser'), 0)
      const under = needlesOfStrip(stripShown(state.run, state.frame), state.frame.condition).filter(
        (index) => bedX(layout, index) >= least && bedX(layout, index) <= most,
      )
      expect(under.length).toBeLessThanOrEqual(1)
    }
  })

  test('distinguishes the one butt under the presser', () => {
    const state = stateOf([], 17, asked)
    const sheet = drawn(strip, state, shape)
    const words = textsOf(sheet, '.labels text').join(' ')
    expect(words).toContain('the 24 other catches move as far and catch nothing')
    expect(words).toContain(`shift ${millimetres(shiftOf(state.run, state.frame))}`)
    expect(underPresser(state.frame, stripOfNeedle(toNeedle(asked), usualPlace))).toBe(asked)
    const { other } = needlesLarge(state.frame, stripOfNeedle(toNeedle(asked), usualPlace))
    expect(stripOfNeedle(other!, usualPlace)).toBe(stripOfNeedle(toNeedle(asked), usualPlace))
    expect(state.frame.buttHeights[other!]).toBeCloseTo(0, 6)
    const { tip, shift } = catchOf(state.frame, other!)
    expect(tip).toBe(shift)
  })

  test('turns a rocker’s top to the left and its rod to the right, as far as its strip goes', () => {
    const state = stateOf([], 17, asked)
    const sheet = drawn(strip, state, shape)
    const pushed = sheet.querySelector('.push-rod.pushed')
    const column = Number(pushed!.getAttribute('data-part')!.slice('rocker.'.length))
    const out = state.frame.rockerOuts[column - 1]! * along
    const still = drawn(strip, stateOf(['belt.off'], 17, asked), shape)
    const rest = pointsOf(still.querySelector(`.push-rod[data-part="rocker.${column}"]`))
    const now = pointsOf(pushed)
    expect(now[0]![0] - rest[0]![0]).toBeCloseTo(out, 0)
    expect(now.at(-1)![0] - rest.at(-1)![0]).toBeCloseTo(out, 0)
    const lever = pointsOf(sheet.querySelector('.lever.pushed'))
    if (shape === 'wide') expect(lever[1]![0] - lever[0]![0]).toBeCloseTo(lever[2]![0] - lever[1]![0], 0)
    if (shape === 'wide') expect(lever[0]![0]).toBeLessThan(lever[2]![0])
  })

  test('puts the strip in the bed, below the butts’ spurs', () => {
    const sheet = drawn(strip, stateOf([], 17, asked), shape)
    const bar = spanOf(sheet.querySelector('.machine .long-bar'), 1)
    const channel = spanOf(sheet.querySelector('.machine .channel'), 1)
    expect(bar.least).toBeGreaterThan(channel.least)
    expect(bar.most).toBeLessThan(channel.most + 0.1)
    for (const one of sheet.querySelectorAll('.small-catch'))
      expect(spanOf(one, 1).most).toBeCloseTo(bar.least, 0)
  })

  test('shows a rod that pushes a seized strip in vain', () => {
    const number = stripOfNeedle(toNeedle(asked), usualPlace)
    const state = stateOf([`strip.${number}.seized`], 17, asked)
    const sheet = drawn(strip, state, shape)
    expect(sheet.querySelector('.long-bar.broken[fill^="url"]')).not.toBeNull()
    expect([...sheet.querySelectorAll('.push-rod')].some((rod) => /Q/.test(rod.getAttribute('d')!))).toBe(
      true,
    )
    expect(textsOf(sheet, '.labels text')).toContain('in vain')
    const sound = drawn(strip, stateOf([], 17, asked), shape)
    expect([...sound.querySelectorAll('.push-rod')].some((rod) => /Q/.test(rod.getAttribute('d')!))).toBe(
      false,
    )
  })

  test('shows what is left of a slow strip’s shift once the push has passed', () => {
    const number = stripOfNeedle(toNeedle(asked), usualPlace)
    const state = stateOf([`strip.${number}.slow`], 17, asked + 4, { speed: 1200 })
    const left = leftOver(state.frame, number)
    expect(left).toBeGreaterThan(1)
    const sheet = drawn(strip, state, shape)
    const { least, most } = spanOf(sheet.querySelector('.left-behind'), 0)
    expect((most - least) / along).toBeCloseTo(left, 1)
    expect(sheet.querySelector('.machine .glow')?.getAttribute('d')).not.toContain('H')
  })

  test('means the carriage’s place along the bed', () => {
    const { frame } = stateOf([], 17, 40)
    for (const place of [-12, 0, 55.5, 211])
      expect(strip.placeAt!(shape, bedX(layout, place), layout.rest, frame)).toBeCloseTo(place, 6)
    expect(strip.placeAt!(shape, 0, layout.panel.top + 1, frame)).toBeNull()
  })
})

test('a broken strip is shown wherever the carriage is, unless another broken one is under the presser', () => {
  for (const x of [-12, 30, 100.4, 211]) {
    const { run, frame } = stateOf(['strip.6.seized'], 17, x)
    expect(stripShown(run, frame)).toBe(6)
  }
  const both = ['strip.6.seized', 'strip.2.over']
  const under = needlesOfStrip(toStrip(2), usualPlace)[9]!
  const { run, frame } = stateOf(both, 17, under)
  expect(stripShown(run, frame)).toBe(2)
  const sound = stateOf([], 17, under)
  expect(stripShown(sound.run, sound.frame)).toBe(2)
})

test('the words say how many catches move and how many butts are under the presser', () => {
  const { run, frame } = stateOf([], 17, asked)
  const words = strip.describe(run, frame)
  expect(words).toContain('Its 25 catches have moved with it')
  expect(words).toContain('Only one of its butts')
  expect(words).toContain('the other 24 have nothing to catch')
})
