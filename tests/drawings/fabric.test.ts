import { describe, expect, test } from 'vitest'
import { figure as fabric } from '@/drawings/fabric/figure.ts'
import { layouts, windowFrom } from '@/drawings/fabric/layout.ts'
import { clothView, viewOf } from '@/drawings/fabric/view.ts'
import { shapes } from '@/drawings/shared/figure-contract.ts'
import { askedRow, hasKnitted, knittedRow, longFloats } from '@/mechanism/fabric.ts'
import { wholeBed } from '@/mechanism/bed.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { drawn, expectSameOverAll, expectSound, type State, stateOf, states, textsOf } from './redraw.ts'

const pathOf = (state: State, shape: 'wide' | 'narrow', selector: string): string =>
  [...drawn(fabric, state, shape).querySelectorAll(selector)].map((path) => path.getAttribute('d')).join('')

/** Stitches in a yarn's path: each has two legs. */
const stitchesIn = (path: string): number => (path.match(/q/g) ?? []).length / 2

/** Needles, passes where these needles have a stitch. */
const stitchesOf = (
  state: State,
  shape: 'wide' | 'narrow',
  first: number,
  last: number,
): [number, number][] => {
  const layout = layouts[shape]
  const { bed } = state.run.condition
  const all: [number, number][] = []
  for (let index = first; index <= last; index++)
    for (let row = 0; row < layout.rows; row++)
      if (index >= bed.first && index <= bed.last)
        if (row > 0 || hasKnitted(state.frame.x, toNeedle(index), state.frame.pass.way))
          all.push([index, state.frame.pass.pass - row])
  return all
}

/** Those in the window. */
const inWindow = (state: State, shape: 'wide' | 'narrow'): [number, number][] => {
  const layout = layouts[shape]
  const from = windowFrom(layout, state.run.condition.bed, state.frame.x)
  return stitchesOf(state, shape, Math.floor(from), Math.ceil(from + layout.needles - 1))
}

/** Those that are drawn: the cloth reaches beyond its window, which clips it. */
const inCloth = (state: State, shape: 'wide' | 'narrow'): [number, number][] => {
  const { indexes } = clothView(viewOf(state.run, state.frame, { shape, prefix: 'test' }))
  const seen = inWindow(state, shape).map(([index]) => index)
  expect(Math.min(...indexes)).toBeLessThanOrEqual(Math.min(...seen))
  expect(Math.max(...indexes)).toBeGreaterThanOrEqual(Math.max(...seen))
  return stitchesOf(state, shape, indexes[0]!, indexes.at(-1)!)
}

describe.each(shapes)('the %s figure of row and fabric', (shape) => {
  test('is the same however it came to its state', { timeout: 30000 }, () => expectSameOverAll(fabric, shape))
  test('has a number wherever one is due', () => expectSound(fabric, shape))

  test.each(states)('has a stitch of each yarn for every needle that knitted it, state %#', (state) => {
    const window = inCloth(state, shape)
    for (const [cloth, rowOf] of [
      ['knitted', knittedRow],
      ['asked', askedRow],
    ] as const)
      for (const yarn of ['first', 'second'] as const)
        expect(stitchesIn(pathOf(state, shape, `.${cloth} .yarn.${yarn}`))).toBe(
          window.filter(([index, pass]) => rowOf(state.run, pass)[index] === yarn).length,
        )
  })

  test.each(states)('says how many stitches in the window differ, state %#', (state) => {
    const window = inWindow(state, shape)
    const wrong = window.filter(
      ([index, pass]) => knittedRow(state.run, pass)[index] !== askedRow(state.run, pass)[index],
    ).length
    expect(textsOf(drawn(fabric, state, shape), '.label').join()).toContain(
      wrong === 0 ? 'no stitch differs' : `${wrong} of ${window.length} differ`,
    )
    const isSound = inCloth(state, shape).every(
      ([index, pass]) => knittedRow(state.run, pass)[index] === askedRow(state.run, pass)[index],
    )
    expect(pathOf(state, shape, '.knitted .wrong') === '').toBe(isSound)
    expect(pathOf(state, shape, '.asked .wrong')).toBe('')
  })
})

test('a healthy machine knits what the card asks for', () => {
  const state = stateOf([], 17, 104)
  for (const yarn of ['first', 'second'])
    expect(pathOf(state, 'wide', `.knitted .yarn.${yarn}`).replaceAll(/,[\d.]+/g, '')).toBe(
      pathOf(state, 'wide', `.asked .yarn.${yarn}`).replaceAll(/,[\d.]+/g, ''),
    )
})

test('the rows are numbered by the card rows that were read, one behind the needles', () => {
  const numbers = textsOf(drawn(fabric, stateOf(['pawl.double'], 4, 100), 'wide'), '.row-number')
  expect(numbers).toEqual(['5', '3', '3', '2', '1', '1'])
})

test('a long float is dashed, in the fabric where it is', () => {
  const state = stateOf([], 5, 211)
  const long = longFloats(askedRow(state.run, 4)).filter(({ first }) => first >= 152)
  expect(long.length).toBeGreaterThan(0)
  expect(pathOf(state, 'wide', '.asked .float')).not.toBe('')
  const plain = stateOf([], 2, 100, { card: [0xaaaaaa] })
  expect(pathOf(plain, 'wide', '.asked .float')).toBe('')
})

test('the window keeps to the needles in use, or has them in its middle', () => {
  expect(windowFrom(layouts.wide, wholeBed, -12)).toBe(0)
  expect(windowFrom(layouts.wide, wholeBed, 211)).toBe(200 - 48)
  expect(windowFrom(layouts.wide, { first: toNeedle(90), last: toNeedle(109) }, 150)).toBe(76)
})

describe('in words', () => {
  test('a seized strip is every eighth needle', () => {
    const words = fabric.describe(stateOf(['strip.3.seized'], 6, 211).run, stateOf([], 6, 211).frame)
    expect(words).toContain('every eighth')
  })
  test('a sound fabric is as the card asks', () => {
    const { run, frame } = stateOf([], 6, 100)
    expect(fabric.describe(run, frame)).toContain('as the card asks.')
  })
  test('a long float is named with its length', () => {
    const { run, frame } = stateOf([], 5, 211, { card: [0x800001, 0xffffff, 0xaaaaaa] })
    expect(fabric.describe(run, frame)).toContain('passes behind 22 stitches')
  })
  test.each(states)('nothing is left open, state %#', ({ run, frame }) => {
    expect(fabric.describe(run, frame)).not.toMatch(/NaN|undefined|null|  /)
  })
})

test.each(shapes)('the cloth round the middle is the same on a bed of any length, %s', (shape) => {
  const stitches = (needles: number): (string | null)[] => {
    const bed = { first: toNeedle(100 - needles / 2), last: toNeedle(99 + needles / 2) }
    const sheet = drawn(
      fabric,
      stateOf(['strip.3.seized'], 9, 100, { own: needles === 200 ? {} : { needles }, bed }),
      shape,
    )
    return [...sheet.querySelectorAll('path')]
      .map((path) => path.getAttribute('d'))
      .filter((d) => d?.includes('q'))
  }
  const usual = stitches(200)
  expect(usual.length).toBeGreaterThan(5)
  expect(stitches(120)).toEqual(usual)
  expect(stitches(250)).toEqual(usual)
})
