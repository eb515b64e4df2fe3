import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { columnOfNeedle, toBed, usualPlace, wholeBedOf } from '@/mechanism/bed.ts'
import type { Fault } from '@/mechanism/fault.ts'
import { type Scenario, soundScenario } from '@/mechanism/scenario.ts'
import { startRun } from '@/mechanism/pass.ts'
import { stripShift } from '@/mechanism/strip.ts'
import { ofNeedle, toNeedle, toStrip } from '@/mechanism/indices.ts'
import { bedLengths, cardsOrNone, faultAmong, scenarios, speeds } from './arbitraries.ts'
import { allHoles, scattered } from './cards.ts'
import { check } from './check.ts'
import { machine } from './make.ts'
import { simulate } from './simulation.ts'

const known = [
  ...([
    'pawl.right',
    'pawl.left',
    'pawl.double',
    'pawl.skips',
    'pawl.jumps',
    'turn.short',
    'turn.twice',
  ] as const),
  ...([
    'pin.low',
    'pin.high',
    'pin.sticky',
    'sweep.worn',
    'belt.off',
    'carriage.plain',
    'strip.over',
  ] as const),
  ...(['rocker.dead', 'rocker.worn', 'strip.seized', 'presser.right.worn', 'presser.left.worn'] as const),
  ...(['needle.stiff', 'gate.1.low', 'gate.1.high'] as const),
]
const often = ['pin.over', 'strip.slow', 'strip.slow', 'belt.timing', 'belt.slack', 'pivots.loose'] as const

/** Amounts at which the drive still works more or less, so that most cases select something. */
const gentle = (fault: Fault): Fault => {
  if (fault.amount === null) return fault
  if (fault.kind === 'belt.timing') return { ...fault, amount: fault.amount / 80 }
  if (fault.kind === 'belt.slack') return { ...fault, amount: fault.amount / 16 }
  if (fault.kind === 'sweep.worn' || fault.kind === 'rocker.worn')
    return { ...fault, amount: fault.amount / 3 }
  return fault
}

const faults = fc
  .uniqueArray(
    fc.oneof({ arbitrary: faultAmong(often), weight: 3 }, { arbitrary: faultAmong(known), weight: 1 }),
    {
      maxLength: 7,
      selector: ({ kind, at }) => `${kind} ${at.join(' ')}`,
    },
  )
  .chain((all) => fc.boolean().map((wild) => (wild ? all : all.map(gentle))))

const unworn = scenarios({
  card: cardsOrNone,
  faults,
  speed: speeds,
  wear: fc.constant(0),
})

/** A belt that is right, with a wedge and gates far apart: those that the reach of a lead so long asks for, and any. */
const farGates = fc
  .record({
    gateLag: fc.integer({ min: 20, max: 600 }).map((n) => n / 100),
    sweepFlat: fc.integer({ min: 0, max: 400 }).map((n) => n / 100),
    sweepRamp: fc.integer({ min: 20, max: 400 }).map((n) => n / 100),
    needles: bedLengths,
  })
  .chain((own) => unworn.map((scenario) => ({ ...scenario, own, bed: wholeBedOf(own.needles) })))

const tally = { needles: 0, unsure: 0, selected: 0, shifted: 0 }

const compare = (scenario: Scenario, number: number): void => {
  const run = startRun(scenario)
  const pass = run.passOf(number)
  const { shifts, came, unsure, tolerance } = simulate(scenario, number)
  const inUse = scenario.bed.last - scenario.bed.first + 1
  expect(came.size).toBe(inUse)
  const sure = [...came].filter(([needle]) => !unsure.has(needle))
  expect(sure.map(([needle]) => [needle, ofNeedle(pass.came, toNeedle(needle))])).toEqual(sure)
  tally.needles += came.size
  tally.unsure += unsure.size
  tally.selected += sure.filter(([, outcome]) => outcome === 'selected').length
  let most = 0
  for (const { x, strips } of shifts)
    for (const [j, shift] of strips.entries()) {
      const modelled = stripShift(run.condition, pass.drive, toStrip(j + 1), x)
      most = Math.max(most, Math.abs(modelled - shift) - tolerance)
      if (shift > 0) tally.shifted++
    }
  expect(most).toBeLessThanOrEqual(0)
}

describe('the closed forms of a pass agree with stepping the carriage through it', () => {
  test('for a sound machine, slow and fast, both ways', () => {
    for (const speed of [50, 500, 2000])
      for (const pass of [1, 2]) compare({ ...soundScenario(scattered), speed }, pass)
  })

  test('for a strip in thick oil, at speeds below and above the ghost’s', () => {
    for (const speed of [250, 308, 320, 900, 2000])
      for (const pass of [1, 2])
        compare(machine(scattered, ['strip.3.slow', 'strip.5.slow=40'], { speed }).scenario, pass)
  })

  test('for a sweep so early that a strip falls before the gate, at speeds at which it follows and leaves its rocker', () => {
    const bed = toBed({ first: 90, last: 125 })
    for (const speed of [60, 200, 395, 500, 900, 2000])
      for (const timing of [0.7, 0.88, 0.93, 1.0, 1.06, 1.2, 1.5])
        for (const pass of [1, 2])
          compare(
            machine(scattered, [`belt.timing=${timing}`, 'strip.6.slow=30'], { speed, bed }).scenario,
            pass,
          )
  })

  test('for pins and rockers that rattle, with and without springs to their pins', () => {
    for (const pass of [1, 2, 3])
      for (const seed of [1, 2])
        compare(
          machine(scattered, ['pivots.loose=0.5', 'pin.5.over', 'turn.short.3', 'strip.2.slow=200'], { seed })
            .scenario,
          pass,
        )
  })

  test('for a pin without spring whose pass begins while the sweep is beside it, after full and short turns', () => {
    for (const first of [0, 1, 10, 11, 12, 13, 14])
      for (const timing of [0, -1, 0.5])
        for (const pass of [1, 2, 3]) {
          const bed = toBed({ first, last: first + 30 })
          const over = `pin.${columnOfNeedle(toNeedle(first + 12), usualPlace)}.over`
          const faults = [over, 'turn.short.3', `belt.timing=${timing}`, 'strip.2.slow=90']
          compare(machine(allHoles, faults, { bed }).scenario, pass)
        }
  })

  test('for beds of any length, with gates near the presser and far behind it', () => {
    check(
      fc.property(farGates, fc.integer({ min: 1, max: 3 }), (scenario, pass) => compare(scenario, pass)),
      60,
    )
  })

  test('for random machines of many faults, with few needles too near a threshold to tell', () => {
    check(
      fc.property(unworn, fc.integer({ min: 1, max: 4 }), (scenario, pass) => compare(scenario, pass)),
      200,
    )
    expect(tally.needles).toBeGreaterThan(2_000)
    expect(tally.unsure / tally.needles).toBeLessThan(0.01)
    expect(tally.selected / tally.needles).toBeGreaterThan(0.2)
    expect(tally.selected / tally.needles).toBeLessThan(0.8)
    expect(tally.shifted).toBeGreaterThan(100_000)
  }, 120_000)
})
