import { describe, expect, test } from 'vitest'
import { type Figure, shapes, type Shape } from '@/drawings/shared/figure-contract.ts'
import { drawSwatch, swatchNeedles } from '@/drawings/cloth/swatch.ts'
import { figure as fabric } from '@/drawings/fabric/figure.ts'
import { sampleOf } from '@/mechanism/sample.ts'
import { drawn, expectSameOverAll, expectSound, type State, stateOf, states } from './redraw.ts'

const swatch = (cloth: 'knitted' | 'asked'): Figure => ({
  ...fabric,
  draw: (svg, run, frame, { shape, prefix }) => {
    drawSwatch(svg, run, sampleOf(run, frame.pass.pass), { cloth, shape, prefix })
  },
})

const pathOf = (state: State, cloth: 'knitted' | 'asked', shape: Shape, selector: string): string =>
  [...drawn(swatch(cloth), state, shape).querySelectorAll(selector)]
    .map((path) => path.getAttribute('d'))
    .join('')

/** Stitches in a yarn's path: each has two legs. */
const stitchesIn = (path: string): number => (path.match(/q/g) ?? []).length / 2

describe.each(shapes)('the %s swatch', (shape) => {
  test('is the same however it came to its state', { timeout: 30000 }, () =>
    expectSameOverAll(swatch('knitted'), shape),
  )
  test('has a number wherever one is due', () => expectSound(swatch('knitted'), shape))

  test.each(states)('has every stitch of its window, in whole rows, state %#', (state) => {
    const sample = sampleOf(state.run, state.frame.pass.pass)
    const { first, last } = swatchNeedles(sample, shape)
    for (const cloth of ['knitted', 'asked'] as const)
      for (const yarn of ['first', 'second'] as const)
        expect(stitchesIn(pathOf(state, cloth, shape, `.${cloth} .yarn.${yarn}`))).toBe(
          sample.rows.reduce(
            (sum, row) => sum + row[cloth].slice(first, last + 1).filter((stitch) => stitch === yarn).length,
            0,
          ),
        )
  })

  test('outlines and hatches what is wrong, in the fabric as it comes out only', () => {
    const state = stateOf(['strip.3.seized'], 2, 100)
    for (const selector of ['.wrong', '.wrong-edge']) {
      expect(pathOf(state, 'knitted', shape, selector)).not.toBe('')
      expect(pathOf(state, 'asked', shape, selector)).toBe('')
    }
    expect(pathOf(stateOf([], 2, 100), 'knitted', shape, '.wrong')).toBe('')
  })

  test('marks no long floats', () => {
    expect(pathOf(stateOf([], 5, 211), 'asked', shape, '.float')).toBe('')
  })
})
