import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Fault } from '../../src/mechanism/fault.ts'
import { chanceOfSelection } from '../../src/mechanism/margins.ts'
import { startRun } from '../../src/mechanism/pass.ts'
import { soundScenario } from '../../src/mechanism/scenario.ts'
import { isChanceExact, tryMachines, type Trials } from '../../src/mechanism/trials.ts'

const machine = (wear: number, faults: readonly Fault[] = [], speed = 500) =>
  startRun({ ...soundScenario([0xffffff]), wear, faults, speed })

const tried = (run: ReturnType<typeof machine>, way: 1 | -1, machines: number): Trials => {
  for (const trials of tryMachines(run, way)) if (trials.machines === machines) return trials
  throw new Error('the trials ended')
}

describe('machines tried out', () => {
  it('all select every needle as new, and none with the sweep worn away', () => {
    expect(tried(machine(0), 1, 5)).toEqual({ machines: 5, share: 1, error: 0 })
    const worn = machine(0, [{ kind: 'sweep.worn', at: [], amount: 2 }])
    expect(tried(worn, -1, 5).share).toBe(0)
  })

  it('miss a strip’s needles where that strip is seized', () => {
    const run = machine(0, [{ kind: 'strip.seized', at: [3], amount: null }])
    expect(tried(run, 1, 3).share).toBeCloseTo(7 / 8, 10)
    expect(isChanceExact(run, 1)).toBe(false)
  })

  it('agree with the closed form at every wear, either way, within five standard errors', () => {
    for (const wear of [0.5, 0.6, 0.7, 0.8, 0.9, 1])
      for (const way of [1, -1] as const) {
        const run = machine(wear)
        const { share, error } = tried(run, way, 300)
        expect(Math.abs(share - chanceOfSelection(run, way))).toBeLessThanOrEqual(5 * error + 0.002)
      }
  })

  it('agree with it under every fault that it takes in, at any speed', () => {
    const amount = (most: number) => fc.double({ min: 0, max: most, noNaN: true })
    const fault = fc.oneof(
      amount(1.3).map((mm): Fault => ({ kind: 'card.side', at: [], amount: mm })),
      amount(0.15).map((mm): Fault => ({ kind: 'card.skew', at: [], amount: mm })),
      amount(0.8).map((mm): Fault => ({ kind: 'sweep.worn', at: [], amount: mm })),
      amount(0.8).map((mm): Fault => ({ kind: 'presser.right.worn', at: [], amount: mm })),
      amount(0.8).map((mm): Fault => ({ kind: 'presser.left.worn', at: [], amount: mm })),
      amount(0.6).map((mm): Fault => ({ kind: 'gate.1.low', at: [], amount: mm })),
      amount(1.5).map((mm): Fault => ({ kind: 'gate.1.high', at: [], amount: mm })),
      amount(400).map((ms): Fault => ({ kind: 'strip.slow', at: [2], amount: 5 + ms })),
    )
    fc.assert(
      fc.property(
        fault,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.integer({ min: 50, max: 2000 }),
        fc.constantFrom(1 as const, -1 as const),
        (one, wear, speed, way) => {
          const run = machine(wear, [one], speed)
          fc.pre(isChanceExact(run, way))
          const { share, error } = tried(run, way, 120)
          expect(Math.abs(share - chanceOfSelection(run, way))).toBeLessThanOrEqual(6 * error + 0.006)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('are the same whenever they are tried', () => {
    const run = machine(0.8)
    expect(tried(run, 1, 20)).toEqual(tried(machine(0.8), 1, 20))
  })
})
