import { describe, expect, test } from 'vitest'
import { sortByHeight } from '@/mechanism/gate.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { reasonOf } from '@/mechanism/reason.ts'
import { machine } from './make.ts'

const gate1 = 0.45

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
    expect(sortByHeight(height, gate1)).toBe(outcome)
  })

  test('share a needle out between them: a first gate hung lower takes from the second', () => {
    expect(sortByHeight(-0.9, gate1 + 0.5)).toBe('plain')
    expect(sortByHeight(0, gate1 - 0.5)).toBe('selected')
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
