import { describe, expect, test } from 'vitest'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { lengthX, layouts } from '@/drawings/margins/layout.ts'
import { figure as margins } from '@/drawings/margins/figure.ts'
import { chanceOfSelection } from '@/mechanism/chance.ts'
import { leastMargin, margins as marginsOf } from '@/mechanism/margins.ts'
import { marginLength, marginWords, percent } from '@/words/figures/margins.ts'
import { drawn, expectSameOverAll, expectSound, stateOf, states, textsOf } from './redraw.ts'

/** Where a bar that is not broken off ends. */
const endOf = (path: string): number => Number(/H([-\d.]+)/.exec(path)?.[1])

describe.each(shapes)('the %s figure of the margins', (shape) => {
  const layout = layouts[shape]
  test('is the same however it came to its state', { timeout: 30000 }, () =>
    expectSameOverAll(margins, shape),
  )
  test('has a number wherever one is due', () => expectSound(margins, shape))

  test.each(states)(
    'draws each margin from the failing line as long as the model has it, state %#',
    (state) => {
      const all = marginsOf(state.run, state.frame.pass.way)
      const bars = [...drawn(margins, state, shape).querySelectorAll('.bars .present')]
      expect(bars).toHaveLength(all.length)
      for (const [n, bar] of bars.entries()) {
        const margin = all[n]!
        expect(bar.getAttribute('data-margin')).toBe(margin.id)
        expect(bar.getAttribute('data-state')).toBe(
          `${margin.mm <= 0 ? 'fails' : 'works'}${margin === leastMargin(all) ? ' least' : ''}`,
        )
        if (margin.mm > layout.least && margin.mm < layout.most)
          expect(endOf(bar.getAttribute('d') ?? '')).toBeCloseTo(layout.zero + margin.mm * layout.perMm, 0)
      }
    },
  )

  test.each(states)('writes the lengths and the chance that the model gives, state %#', (state) => {
    const sheet = drawn(margins, state, shape)
    const { way } = state.frame.pass
    expect(textsOf(sheet, '.lengths .label')).toEqual(marginsOf(state.run, way).map(marginLength))
    expect(textsOf(sheet, '.chance-labels .label')[0]).toBe(percent(chanceOfSelection(state.run, way)))
  })

  test.each([0, 0.3, 0.5, 0.71, 0.8, 1])('the mark at wear %d lies on the curve’s scale', (wear) => {
    const { run, frame } = stateOf([], 1, 100, { wear })
    const mark = drawn(margins, { run, frame }, shape).querySelector('.wear-mark')
    const { x, y, width, height } = layout.curve
    expect(Number(mark?.getAttribute('cx'))).toBeCloseTo(x + wear * width, 0)
    expect(Number(mark?.getAttribute('cy'))).toBeCloseTo(y + (1 - chanceOfSelection(run, 1)) * height, 0)
  })

  test('the curve changes with what is broken and how fast, and not with wear or place', () => {
    const curve = (...of: Parameters<typeof stateOf>): string | null | undefined =>
      drawn(margins, stateOf(...of), shape)
        .querySelector('.curve')
        ?.getAttribute('d')
    expect(curve([], 1, 100, { wear: 0.4, seed: 3 })).toBe(curve([], 5, 60))
    expect(curve(['presser.right.worn=0.5'], 1, 100)).not.toBe(curve([], 1, 100))
    expect(curve(['presser.right.worn=0.5'], 1, 100)).not.toBe(curve(['presser.right.worn=0.5'], 2, 100))
  })
})

test('a length past the scale’s end is drawn at the end, with a break', () => {
  const state = stateOf(['card.side=4', 'sweep.worn=2'], 1, 100)
  const [hole, lowPin] = [...drawn(margins, state, 'wide').querySelectorAll('.bars .present')].map(
    (bar) => bar.getAttribute('d') ?? '',
  )
  const { least, most } = layouts.wide
  expect(lengthX(layouts.wide, -3)).toBe(lengthX(layouts.wide, least))
  expect(hole).toContain('l-5')
  expect(hole).toContain(`L${lengthX(layouts.wide, least)}`)
  expect(lowPin).toContain(`L${Number(lengthX(layouts.wide, most).toFixed(1))}`)
})

describe('in words', () => {
  test('all margins are named with their lengths', () => {
    const { run, frame } = stateOf([], 1, 100)
    const words = margins.describe(run, frame)
    for (const margin of marginsOf(run, 1))
      expect(words).toMatch(new RegExp(`${marginWords[margin.id].name}|${marginLength(margin)}`))
    expect(words).toContain('Every stage has something left.')
  })
  test('what fails comes first, with how much it is short', () => {
    const { run, frame } = stateOf(['gate.1.low=0.5'], 1, 100)
    expect(margins.describe(run, frame)).toContain(
      'Past its limit: gate, held butt passes below (−0.05\u00a0mm).',
    )
  })
  test('a chance is never called certain', () => {
    expect([1, 0.97625, 0].map(percent)).toEqual(['over 99.9\u00a0%', '97.6\u00a0%', 'under 0.1\u00a0%'])
  })
})
