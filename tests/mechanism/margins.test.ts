import { describe, expect, test } from 'vitest'
import { type MarginId, leastMargin, margins } from '@/mechanism/margins.ts'
import type { Scenario } from '@/mechanism/scenario.ts'
import type { Run } from '@/mechanism/pass.ts'
import { machine, selectedIn } from './make.ts'
import { rowWith } from './trade.ts'

const marginOf = (run: Run, id: MarginId, way: 1 | -1 = 1): number =>
  margins(run, way).find((margin) => margin.id === id)!.mm

/** R3 is selected, as its hole asks, and R4 and R11 are not. */
const works = (run: Run, pass: number): boolean => {
  const selected = selectedIn(run, pass).filter((needle) => needle > 92 && needle < 112)
  return selected.join() === '102'
}

const speed = (mm: number): Partial<Scenario> => ({ speed: mm })

describe('the margins of the machine as drawn', () => {
  test.each([
    ['hole', (3.5 - 1.5) / 2],
    ['lowPin', 2.0 - 1.2],
    ['highPin', 3.0 - 2.0 - (0.4 * (1.2 + 0.2)) / 2.0],
    ['push', 2.0 - 0.2 - 1.2],
    ['release', 1.2],
    ['dip', 1.5 - 0.9],
    ['held', 2.0 - 0.2 - 0.6],
    ['heldUnderFirst', 0.9 - 0.45],
    ['freeOverFirst', 0.45 - 1.5 * Math.exp(-14.4 / 2)],
    ['heldOverSecond', 1.6 - 0.9],
  ] as const)('%s is what its dimensions leave', (id, mm) => {
    for (const way of [1, -1] as const) expect(marginOf(machine([0]), id, way)).toBeCloseTo(mm, 12)
  })

  test.each([0.25, 0.8, 1])('shrink with wear as its table says, at wear %d', (wear) => {
    const run = machine([0], [], { wear })
    const lost = 0.2 + 0.45 * wear
    const reach = 1.2 + 0.1 * wear
    const edge = 2.0 + 0.75 * wear
    expect(marginOf(run, 'highPin')).toBeCloseTo(3.0 - edge - (0.4 * (reach + lost)) / 2.0, 12)
    expect(marginOf(run, 'lowPin')).toBeCloseTo(edge - 1.2, 12)
    expect(marginOf(run, 'push')).toBeCloseTo(2.0 * Math.min(1, (3.0 - edge) / 0.4) - lost - reach, 12)
    expect(marginOf(run, 'dip')).toBeCloseTo(1.5 - 0.35 * wear - 0.9, 12)
  })

  test('are those of each way where the presser or the slack differs', () => {
    const run = machine([0], ['presser.left.worn=0.3', 'belt.slack=1.2'])
    expect(marginOf(run, 'dip', 1)).toBeCloseTo(0.6, 12)
    expect(marginOf(run, 'dip', -1)).toBeCloseTo(0.3, 12)
    // Slack makes the sweep late both ways: here by 0.6 needles, and 1.4 needles before its middle, on its ramp.
    for (const way of [1, -1] as const)
      expect(marginOf(run, 'push', way)).toBeCloseTo(1 + Math.cos((Math.PI * (1.4 - 1.2)) / 0.9) - 1.4, 12)
  })
})

interface Edge {
  readonly id: MarginId
  readonly under: string[]
  readonly over: string[]
  readonly more?: readonly [Partial<Scenario>, Partial<Scenario>]
  readonly passes?: readonly number[]
}

/** On both sides of each margin's zero, computed from the dimensions. */
const edges: readonly Edge[] = [
  { id: 'hole', under: ['card.side=0.99'], over: ['card.side=1.01'] },
  { id: 'highPin', under: ['sweep.worn=0.71'], over: ['sweep.worn=0.73'] },
  { id: 'push', under: ['sweep.worn=0.71'], over: ['sweep.worn=0.73'] },
  { id: 'push', under: ['belt.timing=-0.73'], over: ['belt.timing=-0.74'], passes: [1] },
  { id: 'push', under: ['belt.slack=1.46'], over: ['belt.slack=1.47'] },
  { id: 'held', under: ['belt.timing=1.07'], over: ['belt.timing=1.08'], passes: [1] },
  { id: 'held', under: ['belt.timing=-1.07'], over: ['belt.timing=-1.08'], passes: [2] },
  {
    id: 'held',
    under: ['belt.timing=0.96'],
    over: ['belt.timing=0.98'],
    more: [speed(200), speed(200)],
    passes: [1],
  },
  {
    id: 'release',
    under: ['strip.3.slow'],
    over: ['strip.3.slow'],
    more: [speed(311), speed(316)],
  },
  { id: 'dip', under: ['presser.right.worn=0.59'], over: ['presser.right.worn=0.61'], passes: [1] },
  { id: 'dip', under: ['presser.left.worn=0.59'], over: ['presser.left.worn=0.61'], passes: [2] },
  { id: 'heldUnderFirst', under: ['gate.1.low=0.44'], over: ['gate.1.low=0.46'] },
  // At 2000 mm/s a free butt has 3.6 ms and is still 1.5/e^1.8 = 0.248 mm down.
  {
    id: 'freeOverFirst',
    under: ['gate.1.high=0.2'],
    over: ['gate.1.high=0.21'],
    more: [speed(2000), speed(2000)],
  },
]

describe('a margin is positive just where the model works', () => {
  test.each(edges)(
    '$id: with $under and with $over',
    ({ id, under, over, more = [{}, {}], passes = [1, 2] }) => {
      for (const pass of passes) {
        const way = pass === 1 ? 1 : -1
        const good = machine([rowWith(3)], under, more[0])
        const bad = machine([rowWith(3)], over, more[1])
        expect(marginOf(good, id, way)).toBeGreaterThan(0)
        expect(works(good, pass)).toBe(true)
        expect(marginOf(bad, id, way)).toBeLessThan(0)
        expect(works(bad, pass)).toBe(false)
        expect(leastMargin(margins(bad, way)).mm).toBeLessThan(0)
      }
    },
  )

  test('a rocker worn by less than the push’s margin still selects and by more does not', () => {
    const spare = marginOf(machine([rowWith(3)]), 'push')
    expect(works(machine([rowWith(3)], [`rocker.3.worn=${(spare - 0.01).toFixed(2)}`]), 1)).toBe(true)
    expect(works(machine([rowWith(3)], [`rocker.3.worn=${(spare + 0.01).toFixed(2)}`]), 1)).toBe(false)
  })

  test('a skewed card fails first at its outermost columns', () => {
    const skew = (mm: number): Run => machine([0xffffff], [`card.skew=${mm}`])
    expect(marginOf(skew(0.086), 'hole')).toBeGreaterThan(0)
    expect(selectedIn(skew(0.086), 1)).toHaveLength(200)
    expect(marginOf(skew(0.088), 'hole')).toBeLessThan(0)
    expect(
      skew(0.088)
        .passOf(1)
        .came.slice(100, 124)
        .map((came) => came === 'plain'),
    ).toEqual(Array.from({ length: 24 }, (_, n) => n === 0 || n === 23))
  })

  // A belt half a needle out brings the ghost half a needle nearer in one way and sends it further in the other.
  test.each([
    [0.5, 1],
    [0.5, 2],
    [-0.5, 1],
    [-0.5, 2],
  ])('release: with a thick strip and the belt out by %d, in pass %i', (timing, pass) => {
    for (const mm of [280, 300, 330, 350]) {
      const run = machine([rowWith(3)], ['strip.3.slow', `belt.timing=${timing}`], speed(mm))
      expect([mm, marginOf(run, 'release', pass === 1 ? 1 : -1) > 0]).toEqual([mm, works(run, pass)])
    }
  })

  test('a retainer bar’s margin is that of its median butt', () => {
    const late = machine([0], ['retainer.worn=20'])
    expect(marginOf(late, 'freeOverFirst')).toBeCloseTo(0.45 - 1.5 * Math.exp(-14.4 / 20), 12)
  })
})

test('the least margin is the smallest of all, with its stage', () => {
  expect(leastMargin(margins(machine([0], ['presser.right.worn=0.5']), 1))).toMatchObject({
    id: 'dip',
    stage: 'hold',
  })
  expect(leastMargin(margins(machine([0], ['card.side=0.95']), 1))).toMatchObject({
    id: 'hole',
    stage: 'card',
  })
})
