import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  canonicalPlace,
  columnOfNeedle,
  needleIndex,
  needleName,
  placeByHole,
  usualPlace,
  wholeBedOf,
} from '@/mechanism/bed.ts'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { needlesOfBed, ofNeedle, toColumn, toNeedle } from '@/mechanism/indices.ts'
import { startRun } from '@/mechanism/pass.ts'
import { type Scenario, soundScenario } from '@/mechanism/scenario.ts'
import { bedLengths, columns, faultsAmong, needles, passes, scenarios, without } from './arbitraries.ts'
import { check } from './check.ts'
import { count, everyNeedle, machine, selectedIn } from './make.ts'
import { rowWith } from './trade.ts'

const named = (...names: string[]): number[] => names.map((name) => needleIndex(name)!)

test('without further ado R1 is of column 1', () => {
  expect(needleName(usualPlace.columnOne)).toBe('R1')
  expect(machine([0]).scenario.columnOne).toBe(usualPlace.columnOne)
})

test('a hole in column 1 selects the needle that is said to be of column 1, and every 24th from there', () => {
  const card = [rowWith(1)]
  const every = (first: string): number[] =>
    everyNeedle.filter((needle) => (needle - needleIndex(first)!) % 24 === 0)
  for (const first of ['R1', 'R5', 'R24', 'L1', 'L12', 'L100', 'R100']) {
    const columnOne = needleIndex(first)!
    for (const pass of [1, 2])
      expect(selectedIn(machine(card, [], { columnOne }), pass)).toEqual(every(first))
  }
  expect(selectedIn(machine(card, [], { columnOne: needleIndex('R5')! }), 1)).toEqual(
    named('L92', 'L68', 'L44', 'L20', 'R5', 'R29', 'R53', 'R77'),
  )
})

test('one hole and one pass tell where the card lies, by any needle that comes forward, on a bed of any length', () => {
  check(
    fc.property(bedLengths, needles, columns, passes, (length, columnOne, column, pass) => {
      const run = startRun({
        ...soundScenario([rowWith(column)]),
        own: { needles: length },
        bed: wholeBedOf(length),
        columnOne,
      })
      const { came } = run.passOf(pass)
      const forward = needlesOfBed(length).filter((needle) => ofNeedle(came, needle) === 'selected')
      expect(forward.length).toBeGreaterThanOrEqual(2)
      for (const needle of forward)
        expect(placeByHole(needle, toColumn(column))).toEqual(canonicalPlace({ columnOne }))
    }),
    60,
  )
})

test('a strip that is seized is missed on its own needles, counted from the needle of column 1', () => {
  const run = machine([0xffffff], ['strip.1.seized'], { columnOne: needleIndex('R3')! })
  const missed = run.passOf(1).departures.map(({ needle }) => needleName(needle))
  expect(missed).toHaveLength(25)
  expect(missed).toContain('R3')
  expect(missed).toContain('L6')
})

test('each needle has an equal among R1 to R24, which gives every needle the same column', () => {
  for (const columnOne of everyNeedle) {
    const equal = canonicalPlace({ columnOne })
    expect(named('R1', 'R24')).toEqual([Math.min(equal.columnOne, 100), Math.max(equal.columnOne, 123)])
    for (const needle of everyNeedle)
      expect(columnOfNeedle(needle, equal)).toBe(columnOfNeedle(needle, { columnOne }))
    expect(columnOfNeedle(columnOne, equal)).toBe(toColumn(1))
  }
})

test('another needle of the same column gives the same machine, worn and rattling as it may be', () => {
  check(
    fc.property(scenarios(), passes, fc.integer({ min: -8, max: 8 }), (scenario, number, times) => {
      const other = scenario.columnOne + 24 * times
      fc.pre(other >= 0 && other < 200)
      const one = startRun(scenario).passOf(number)
      const same = startRun({ ...scenario, columnOne: toNeedle(other) }).passOf(number)
      expect(same.came).toEqual(one.came)
      expect(same.asked).toEqual(one.asked)
      expect(same.departures).toEqual(one.departures)
    }),
    300,
  )
})

const shiftedFault = (fault: Fault, by: number): Fault =>
  fault.kind === 'catch.broken' || fault.kind.startsWith('needle.')
    ? makeFault(fault.kind, [fault.at[0]! + by], fault.amount)
    : fault

/** The machine with everything on its bed so many needles further to the right. */
const shifted = (scenario: Scenario, by: number): Scenario => ({
  ...scenario,
  bed: { first: toNeedle(scenario.bed.first + by), last: toNeedle(scenario.bed.last + by) },
  columnOne: toNeedle(scenario.columnOne + by),
  faults: scenario.faults.map((fault) => shiftedFault(fault, by)),
})

const margin = 30
const inner = fc.integer({ min: margin, max: 199 - margin })

// What rattles or springs up late is drawn by the needle, so it does not move along; what sticks is drawn by the column.
const movable = scenarios({
  faults: faultsAmong(without('retainer.worn', 'pivots.loose'), 6).map((faults) =>
    faults.filter(({ at: [place = margin], kind }) =>
      kind === 'catch.broken' || kind.startsWith('needle.') ? place >= margin && place < 200 - margin : true,
    ),
  ),
  wear: fc.constant(0),
  bed: fc
    .tuple(inner, inner)
    .map(([a, b]) => ({ first: toNeedle(Math.min(a, b)), last: toNeedle(Math.max(a, b)) })),
  columnOne: inner.map(toNeedle),
})

test('with column 1 and the needles in use so many needles further on, all that happens does so there', () => {
  check(
    fc.property(movable, passes, fc.integer({ min: -margin, max: margin }), (scenario, number, by) => {
      const run = startRun(scenario)
      const moved = startRun(shifted(scenario, by))
      const [pass, other] = [run.passOf(number), moved.passOf(number)]
      const inUse = count(scenario.bed.first, scenario.bed.last)
      expect(inUse.map((needle) => other.came[needle + by])).toEqual(inUse.map((needle) => pass.came[needle]))
      expect(other.row).toBe(pass.row)
      expect(other.departures.map(({ needle, column, stage }) => [needle - by, column, stage])).toEqual(
        pass.departures.map(({ needle, column, stage }) => [needle, column, stage]),
      )
      const x = (scenario.bed.first + scenario.bed.last) / 2
      const [frame, image] = [frameAt(run, number, x), frameAt(moved, number, x + by)]
      expect(image.column).toBe(frame.column)
      expect(image.sweepAt).toBeCloseTo(frame.sweepAt, 9)
      for (const [n, shift] of frame.stripShifts.entries()) expect(image.stripShifts[n]).toBeCloseTo(shift, 9)
      for (const [n, lean] of frame.pinLeans.entries()) expect(image.pinLeans[n]).toBeCloseTo(lean, 9)
    }),
    300,
  )
})

test('where column 1 is changes no draw: the same parts are as they are', () => {
  check(
    fc.property(scenarios(), needles, (scenario, columnOne) => {
      const [one, other] = [startRun(scenario).condition, startRun({ ...scenario, columnOne }).condition]
      expect(other).toEqual({ ...one, columnOne })
    }),
  )
})
