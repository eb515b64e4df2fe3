import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { figure as gates } from '@/drawings/gates/figure.ts'
import { behindAt, behindX, layouts, levelY, lift, perMm } from '@/drawings/gates/layout.ts'
import { needleIndex } from '@/mechanism/bed.ts'
import { cams, dimensions } from '@/mechanism/dimensions.ts'
import { sinceLetGo } from '@/mechanism/frame.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { sortingOf } from '@/words/figures/gates.ts'
import { millimetres } from '@/words/lists.ts'
import { isWithin, type Point, pointsOf, spanOf } from './path-points.ts'
import { drawn, expectSameOverAll, expectSound, type State, stateOf, states, textsOf } from './redraw.ts'

const indexOf = (element: Element): number => {
  const part = element.getAttribute('data-part') ?? ''
  return needleIndex(part.slice('needle.'.length)) ?? -1
}

describe.each(shapes)('the %s figure of the gates', (shape) => {
  const layout = layouts[shape]
  const tops = (state: State): Element[] =>
    [...drawn(gates, state, shape).querySelectorAll('.butt-top')].filter((one) => indexOf(one) >= 0)

  test('is the same however it came to its state', () => expectSameOverAll(gates, shape))
  test('has a number wherever one is due', () => expectSound(gates, shape))

  test.each(states)(
    'draws the butts of the frame in both views where the model has them, state %#',
    (state) => {
      const { frame } = state
      const sides = [...drawn(gates, state, shape).querySelectorAll('.butt-side')].filter(
        (one) => one.getAttribute('d') !== '',
      )
      for (const butt of tops(state)) {
        const index = indexOf(butt)
        const x = behindX(layout, frame.pass.way, sinceLetGo(frame.x, toNeedle(index), frame.pass.way))
        expect(spanOf(butt, 0).least + layout.half).toBeCloseTo(x, 0)
        const travel = (spanOf(butt, 1).least + layout.half - layout.line) / perMm(layout)
        expect(travel).toBeCloseTo(frame.needleTravels[index]!, 1)
        const side = sides.filter((one) => indexOf(one) === index)
        expect(side).toHaveLength(frame.condition.needleGone[index] ? 0 : 1)
        if (!side[0]) continue
        const height = (layout.rest - spanOf(side[0], 1).least) / (perMm(layout) * lift)
        expect(height).toBeCloseTo(frame.buttHeights[index]!, 1)
        expect(spanOf(side[0], 0).least + layout.half).toBeCloseTo(x, 0)
      }
    },
  )

  test.each(states)('draws the edges of the cams at the model’s depths, state %#', (state) => {
    const sheet = drawn(gates, state, shape)
    const depth = (part: string): number =>
      (spanOf(sheet.querySelector(`.cam-cut[data-part="${part}"]`), 1).most - layout.rest) /
      (perMm(layout) * lift)
    const { gate1, dip } = sortingOf(state.frame)
    expect(depth('gate.2')).toBeCloseTo(dimensions.gate2, 1)
    expect(depth('presser')).toBeCloseTo(dip, 1)
    const clipped = layout.camTop + 4 > levelY(layout, -gate1)
    if (!clipped) expect(depth('gate.1')).toBeCloseTo(gate1, 1)
  })

  test('never lets a wall cut a butt that slides along it', () => {
    const walls = (state: State): Point[][] =>
      [...drawn(gates, state, shape).querySelectorAll('.wall')].map(pointsOf)
    for (const pass of [3, 4])
      for (let x = 60; x < 76; x += 0.21) {
        const state = stateOf([], pass, x)
        const [leadFront, leadBack, first, second] = walls(state)
        for (const butt of tops(state)) {
          const index = indexOf(butt)
          const since = sinceLetGo(state.frame.x, toNeedle(index), state.frame.pass.way)
          const came = state.frame.pass.came[index]
          const near =
            since < 0 ? [leadFront!, leadBack!, second!] : came === 'plain' ? [first!, second!] : [second!]
          const inner: Point[] = pointsOf(butt).map(([bx, by], n) => [
            bx + (n === 0 || n === 3 ? 0.9 : -0.9),
            by + (n < 2 ? 0.9 : -0.9),
          ])
          for (const corner of inner)
            for (const wall of near)
              expect(isWithin(corner, wall), `${index} at ${x}, pass ${pass}`).toBe(false)
        }
      }
  })

  test('is mirrored when the carriage goes to the left', () => {
    const cuts = (pass: number): number[] =>
      [...drawn(gates, stateOf([], pass, 100), shape).querySelectorAll('.cam-cut')].map(
        (cam) => spanOf(cam, 0).least + spanOf(cam, 0).most,
      )
    const [right, left] = [cuts(17), cuts(18)]
    for (const [n, sum] of right.entries()) expect(sum + left[n]!).toBeCloseTo(2 * layout.width, 0)
  })

  test('leads each way to the gate that turns it', () => {
    const ends = (faults: readonly string[], speed = 500): { x: number; height: number; wrong: boolean }[] =>
      [...drawn(gates, stateOf(faults, 17, 100, { speed }), shape).querySelectorAll('.stop')]
        .filter((stop) => stop.getAttribute('d') !== '')
        .map((stop) => {
          const { least, most } = spanOf(stop, 0)
          return {
            x: behindAt(layout, 1, (least + most) / 2),
            height: (layout.rest - pointsOf(stop)[0]![1]) / (perMm(layout) * lift),
            wrong: stop.classList.contains('wrong'),
          }
        })
    const [free, held] = ends([])
    expect(free?.x).toBeCloseTo(dimensions.gateLag, 1)
    expect(free?.height).toBeCloseTo(0, 1)
    expect(held?.x).toBeCloseTo(cams.gate2Start, 1)
    expect(held?.height).toBeCloseTo(-dimensions.catchDepth, 1)
    const [slipping] = ends(['retainer.worn=20'])
    expect(slipping?.x).toBeCloseTo(cams.gate2Start, 1)
    expect(slipping?.wrong).toBe(true)
    const [, stopped] = ends(['gate.1.low=0.6'])
    expect(stopped?.x).toBeCloseTo(dimensions.gateLag, 1)
    expect(stopped?.wrong).toBe(true)
  })

  test('draws a stiff butt rising late on a way of its own', () => {
    const { frame } = stateOf([], 17, 100)
    const plain = frame.pass.came.indexOf('plain', 101)
    const name = `R${plain - 99}`
    const state = stateOf([`needle.${name}.stiff=50`], 17, plain + 1, { speed: 1500 })
    const sheet = drawn(gates, state, shape)
    expect(sheet.querySelector('.views .slow.wrong')?.getAttribute('d')).toMatch(/^M/)
    expect(textsOf(sheet, '.labels text').join(' ')).toContain(`${name}, slow`)
    expect(
      drawn(gates, stateOf([], 17, plain + 1), shape)
        .querySelector('.views .slow')
        ?.getAttribute('d'),
    ).toBe('')
  })

  test('draws a butt that its catch lets go too early on a way of its own, up to the gate that turns it', () => {
    const state = stateOf(['belt.timing=1.3'], 17, 0)
    const needle = state.frame.pass.keptFor.findIndex(
      (kept, at) => at > 100 && kept > 0 && kept < dimensions.gateLag,
    )
    const { run, frame } = stateOf(['belt.timing=1.3'], 17, needle + 1)
    const sheet = drawn(gates, { run, frame }, shape)
    expect(sheet.querySelector('.views .slow.wrong')?.getAttribute('d')).toMatch(/^M/)
    expect(textsOf(sheet, '.labels text').join(' ')).toContain(`R${needle - 99}, let go too early`)
    expect(gates.describe(run, frame)).toContain(`R${needle - 99}, which is let go too early,`)
  })

  test('draws presser and gates aside where the carriage is not set to pattern', () => {
    const sheet = drawn(gates, stateOf(['carriage.plain'], 17, 100), shape)
    const cuts = [...sheet.querySelectorAll('.cam-cut')]
    expect(cuts).toHaveLength(3)
    for (const cut of cuts) {
      expect(cut.classList.contains('aside')).toBe(true)
      expect(spanOf(cut, 1).most).toBeLessThan(layout.rest)
    }
  })

  test('means the place of the bed that passes under a point', () => {
    for (const pass of [17, 18]) {
      const { frame } = stateOf([], pass, 100)
      const x = behindX(layout, frame.pass.way, 3)
      expect(gates.placeAt!(shape, x, 50, frame)).toBeCloseTo(100 - 3 * frame.pass.way, 6)
    }
  })
})

test('labels carry the model’s dimensions and margins', () => {
  const words = textsOf(drawn(gates, stateOf([], 17, 100), 'wide'), '.labels text')
  expect(words).toContain(`dip ${millimetres(dimensions.presserRight)}`)
  expect(words).toContain(`edge ${millimetres(dimensions.gate1)} down`)
  expect(words).toContain(`edge ${millimetres(dimensions.gate2)} down`)
  expect(words).toContain(millimetres(dimensions.catchDepth - dimensions.gate1))
  expect(words).toContain(millimetres(dimensions.gate2 - dimensions.catchDepth))
  const low = textsOf(drawn(gates, stateOf(['gate.1.low=0.6'], 17, 100), 'wide'), '.labels text')
  expect(low).toContain('0.6\u00a0mm too low')
  expect(low).toContain('−0.15\u00a0mm')
})

test('the words say which needles are held and which are free', () => {
  const { run, frame } = stateOf([], 17, 100.5)
  const words = gates.describe(run, frame)
  expect(words).toMatch(/(is|are) held, and .* (is|are) free\./)
  expect(words).toContain('14\u00a0ms at 500\u00a0mm/s')
})
