import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { stripShift } from '@/mechanism/strip.ts'
import { toStrip } from '@/mechanism/indices.ts'
import { passes, scenarios, speeds, strips } from './arbitraries.ts'
import { check } from './check.ts'
import { count, machine } from './make.ts'
import { rowWith } from './trade.ts'

const pitch = 4.5
const preload = 0.6

describe('a strip', () => {
  test('stands fully shifted, 1.8 mm, when the sweep is over a high pin of its', () => {
    const run = machine([rowWith(11)])
    expect(stripShift(run.condition, run.passOf(1).drive, toStrip(3), 110)).toBeCloseTo(2.0 - 0.2, 12)
  })

  test('follows its rocker where its spring is fast enough', () => {
    const run = machine([rowWith(11)], [], { speed: 100 })
    const { drive } = run.passOf(1)
    for (const past of [-2, -1.5, -1.2, 0, 1.1, 1.3, 1.6, 1.9]) {
      const push = 1 + Math.cos((Math.PI * Math.max(0, Math.abs(past) - 1.2)) / 0.9)
      expect(stripShift(run.condition, drive, toStrip(3), 110.8 + past)).toBeCloseTo(
        Math.max(0, push - 0.2),
        12,
      )
    }
  })

  test('in thick oil lags behind, by its spring’s exponential, long after the sweep has gone', () => {
    const run = machine([rowWith(11)], ['strip.3.slow'], { speed: 500 })
    const { drive } = run.passOf(1)
    const after = (past: number): number => stripShift(run.condition, drive, toStrip(3), 110 + past)
    const decay = (300 * 500) / (1000 * pitch)
    for (const on of [3, 5, 9])
      expect(after(on + 3)).toBeCloseTo((after(on) + preload) * Math.exp(-3 / decay) - preload, 12)
    expect(after(3)).toBeGreaterThan(1.5)
    expect(after(-11)).toBeLessThan(after(12))
  })

  test('keeps, later on, the most that any instant of its rocker’s push would have left', () => {
    const oils = fc.integer({ min: 5, max: 3000 })
    const worn = fc.constantFrom(0, 0.2, 0.5, 0.7)
    check(
      fc.property(oils, speeds, worn, (oil, speed, wornBy) => {
        const run = machine([rowWith(3)], [`strip.3.slow=${oil}`, `rocker.3.worn=${wornBy}`], { speed })
        const decay = (oil * speed) / (1000 * pitch)
        const left = (past: number): number => {
          const out = 1 + Math.cos((Math.PI * Math.max(0, Math.abs(past) - 1.2)) / 0.9) - 0.2 - wornBy
          return (Math.max(0, out) + preload) * Math.exp(-(6 - past) / decay) - preload
        }
        const most = Math.max(0, ...count(-2100, 2100).map((n) => left(n / 1000)))
        const shift = stripShift(run.condition, run.passOf(1).drive, toStrip(3), 102.8 + 6)
        // Between instants a thousandth of a needle apart the most is missed by less than its bend times 1e-6.
        expect(shift).toBeGreaterThanOrEqual(most - 1e-12)
        expect(shift).toBeLessThanOrEqual(most + 5e-6)
      }),
      200,
    )
  })

  test('is still at the start of a pass, and not shifted by pins that are yet to be met', () => {
    const run = machine([rowWith(3)], ['strip.3.slow=5000'], { speed: 2000 })
    const { drive } = run.passOf(1)
    expect(count(-12, -8).map((x) => stripShift(run.condition, drive, toStrip(3), x))).toEqual([
      0, 0, 0, 0, 0,
    ])
  })

  test('seized never shifts, and stuck shifted stands where a sound rocker would push it', () => {
    const run = machine([0xffffff], ['strip.3.seized', 'strip.4.over'])
    const { drive } = run.passOf(1)
    for (const x of [0, 102, 103, 107.3, 150]) {
      expect(stripShift(run.condition, drive, toStrip(3), x)).toBe(0)
      expect(stripShift(run.condition, drive, toStrip(4), x)).toBeCloseTo(1.8, 12)
    }
  })

  test('rises no faster than the sweep pushes and falls no faster than its spring brings it back', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    const step = fc.double({ min: 0, max: 3, noNaN: true })
    const steepest = (Math.PI * 1.0 * 2.0) / (2 * 0.9)
    check(
      fc.property(scenarios(), passes, strips, share, step, (scenario, number, strip, at, dx) => {
        const run = startRun(scenario)
        const pass = run.passOf(number)
        const span = scenario.bed.last - scenario.bed.first + 24
        const x = pass.drive.start + pass.way * at * span
        const before = stripShift(run.condition, pass.drive, toStrip(strip), x)
        const after = stripShift(run.condition, pass.drive, toStrip(strip), x + pass.way * dx)
        const slow = scenario.faults.filter(({ kind, at: [j] }) => kind === 'strip.slow' && j === strip)
        const time = (1000 * dx * pitch) / scenario.speed
        const fallen = (before + preload) * Math.exp(-time / (slow.at(-1)?.amount ?? 4)) - preload
        expect(after).toBeGreaterThanOrEqual(fallen - 1e-9)
        expect(after).toBeLessThanOrEqual(before + steepest * dx + 1e-9)
      }),
      1000,
    )
  })

  test('follows pins whose spring has gone through a short turn, and lets go of them at a full one', () => {
    // At the start of a pass over the whole bed the sweep is beside none of strip 3's pins.
    const card = [0xffffff]
    const { condition, passOf } = machine(card, ['pin.11.over', 'turn.short.2'])
    const start = (pass: number): number =>
      stripShift(condition, passOf(pass).drive, toStrip(3), passOf(pass).drive.start)
    expect(start(2)).toBeCloseTo(1.8, 12)
    expect(start(3)).toBe(0)
  })
})

test('a sound scenario runs at 500 mm/s on the whole bed, without wear or faults', () => {
  expect(soundScenario(null)).toEqual({
    card: null,
    faults: [],
    speed: 500,
    wear: 0,
    seed: 1,
    bed: { first: 0, last: 199 },
    columnOne: 100,
    own: {},
  })
})
