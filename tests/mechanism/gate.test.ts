import { describe, expect, test } from 'vitest'
import { chanceOfSlower, sortByHeight } from '@/mechanism/gate.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { reasonOf } from '@/mechanism/reason.ts'
import { machine } from './make.ts'

const gates = { gate1: 0.45, gate2: 1.6 }

describe('the two gates', () => {
  test.each([
    [0, 'plain'],
    [-0.44, 'plain'],
    [-0.45, 'selected'],
    [-0.9, 'selected'],
    [-1.59, 'selected'],
    [-1.6, 'unmoved'],
    [-2, 'unmoved'],
  ] as const)('send a butt at %d mm: %s', (height, outcome) => {
    expect(sortByHeight(height, gates)).toBe(outcome)
  })

  test('share a needle out between them: a first gate hung lower takes from the second', () => {
    expect(sortByHeight(-0.9, { ...gates, gate1: 0.95 })).toBe('plain')
    expect(sortByHeight(0, { ...gates, gate1: -0.05 })).toBe('selected')
  })

  test('are named for a held butt: the first where it turned it, the second where it let it pass', () => {
    const run = machine([0xffffff])
    const part = (came: 'plain' | 'unmoved'): string =>
      reasonOf(run.condition, run.passOf(1).drive, toNeedle(102), {
        asked: 'selected',
        came,
        shift: 1.8,
        keptFor: Infinity,
      }).part
    expect([part('plain'), part('unmoved')]).toEqual(['gate.1', 'gate.2'])
  })
})

describe('the chance that a worn retainer bar makes a butt slower than so many ms', () => {
  test('is a half at the median, whatever that is', () => {
    for (const median of [2, 5, 12]) expect(chanceOfSlower(median, median)).toBeCloseTo(0.5, 6)
  })

  // Source: the normal distribution has 15.87 % beyond one deviation and 2.28 % beyond two; the logarithm's is 0.5 here.
  test('is that of the log-normal distribution', () => {
    expect(chanceOfSlower(6, 6 * Math.exp(0.5))).toBeCloseTo(0.1587, 4)
    expect(chanceOfSlower(6, 6 * Math.exp(-0.5))).toBeCloseTo(0.8413, 4)
    expect(chanceOfSlower(3, 3 * Math.exp(1))).toBeCloseTo(0.0228, 4)
  })
})
