import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { chanceOfSelection } from '@/mechanism/chance.ts'
import { isChanceExact } from '@/mechanism/trials.ts'
import { check } from './check.ts'
import { tried, worn } from './tried.ts'

describe('machines tried out', () => {
  test('agree with the closed form at every wear, either way, within five standard errors', () => {
    for (const wear of [0.5, 0.6, 0.7, 0.8, 0.9, 1])
      for (const way of [1, -1] as const) {
        const run = worn(wear)
        const { share, error } = tried(run, way, 300)
        expect(Math.abs(share - chanceOfSelection(run, way))).toBeLessThanOrEqual(5 * error + 0.002)
      }
  })

  test('agree with it under every fault that it takes in, at any speed', () => {
    const amount = (most: number) => fc.double({ min: 0, max: most, noNaN: true })
    const fault = fc.oneof(
      amount(1.3).map((mm): Fault => ({ kind: 'card.side', at: [], amount: mm })),
      amount(0.15).map((mm): Fault => ({ kind: 'card.skew', at: [], amount: mm })),
      amount(0.8).map((mm): Fault => ({ kind: 'sweep.worn', at: [], amount: mm })),
      amount(0.8).map((mm): Fault => ({ kind: 'presser.right.worn', at: [], amount: mm })),
      amount(0.8).map((mm): Fault => ({ kind: 'presser.left.worn', at: [], amount: mm })),
      amount(0.6).map((mm): Fault => ({ kind: 'gate.1.low', at: [], amount: mm })),
      amount(1.5).map((mm): Fault => ({ kind: 'gate.1.high', at: [], amount: mm })),
      amount(400).map((ms) => makeFault('strip.slow', [2], 5 + ms)),
    )
    check(
      fc.property(
        fault,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.integer({ min: 50, max: 2000 }),
        fc.constantFrom(1 as const, -1 as const),
        (one, wear, speed, way) => {
          const run = worn(wear, [one], speed)
          fc.pre(isChanceExact(run, way))
          const { share, error } = tried(run, way, 120)
          expect(Math.abs(share - chanceOfSelection(run, way))).toBeLessThanOrEqual(6 * error + 0.006)
        },
      ),
      60,
    )
  })
})
