import { describe, expect, test } from 'vitest'
import { columnCause, componentsOf, stripCausesOf } from '@/find/components.ts'
import type { DrawnStrip } from '@/find/draw-machines.ts'
import type { DrawnColumn } from '@/find/drawn-columns.ts'
import { drawnPasses, soundPlaces } from '@/find/drawn-passes.ts'
import { scenarioIn } from '@/find/view.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { rightBed } from '@/find/wide-states.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type Drawn, looks, machineOf, never, rightStrip, sound, views, wide } from './drawn-machine.ts'

const columnsWith = (n: number, column: Partial<DrawnColumn>): DrawnColumn[] =>
  [0, 1, 2].map((m) => (m === n ? { ...sound, ...column } : sound))

/** By pass and place, whether the needles of the middle of the bed are selected on the model's machine. */
const modelled = (ids: readonly FaultId[]): boolean[][] =>
  views.map((view) => {
    const { came } = startRun(scenarioIn(view, ids.map(faultOf))).passOf(view.pass)
    // R1 is needle 100; the needle of column 1 is so many needles before it.
    return Array.from(
      { length: 24 },
      (_, place) => came[usualPlace.columnOne + 24 * 3 + place] === 'selected',
    )
  })

const selectedBy = (drawn: Drawn): boolean[][] => {
  const { all, some } = drawnPasses(machineOf(drawn), looks, never)
  expect([...some].every((bits) => bits === 0)).toBe(true)
  return looks.map((_, n) => Array.from(all, (bits) => (bits & (1 << n)) !== 0))
}

describe('a drawn machine', () => {
  test.each<[string, Drawn, FaultId[]]>([
    ['nothing wrong', {}, []],
    ['a strip that is seized', { strips: { 3: { state: 'seized' } } }, ['strip.3.seized']],
    ['one that is stuck shifted', { strips: { 5: { state: 'over' } } }, ['strip.5.over']],
    ['one that is slow', { strips: { 4: { state: 'slow', slow: 6 } } }, ['strip.4.slow=1000']],
    [
      'a pin that stays low',
      { strips: { 2: { columns: columnsWith(1, { state: 'dead' }) } } },
      ['pin.10.low'],
    ],
    [
      'a column that is worn',
      { strips: { 2: { columns: columnsWith(2, { state: 'worn' }) } } },
      ['pin.18.low'],
    ],
    [
      'a pin that stays high',
      { strips: { 8: { columns: columnsWith(0, { state: 'high' }) } } },
      ['pin.8.high'],
    ],
    ['a card that has a wrong hole', { strips: { 8: { columns: columnsWith(0, { state: 'hole' }) } } }, []],
    [
      'a pin always pushed over',
      { strips: { 1: { columns: columnsWith(0, { state: 'over' }) } } },
      ['pin.1.over'],
    ],
    ['a carriage set to plain', { state: wide('carriage.plain') }, ['carriage.plain']],
    ['a belt eight needles out', { state: wide('belt.timing=8') }, ['belt.timing=8']],
    ['a card the wrong way round', { state: wide('card.reversed') }, ['card.reversed']],
    ['a high gate', { state: wide('gate.1.high=0.5') }, ['gate.1.high=0.5']],
  ])('selects in the middle of the bed what the model does: %s', (_, drawn, ids) => {
    expect(selectedBy(drawn)).toEqual(modelled(ids))
    if (drawn.strips === undefined) {
      const places = soundPlaces(wideBedOf(drawn.state ?? rightBed, looks))
      expect(places).toEqual(
        modelled(ids).map((own) => own.reduce((bits, is, place) => (is ? bits | (1 << place) : bits), 0)),
      )
    }
  })

  test('has a sticky pin up where chance has it, and one that does anything in any pass', () => {
    const ofColumn = (column: Partial<DrawnColumn>, chance: number): number =>
      drawnPasses(machineOf({ strips: { 3: { columns: columnsWith(0, column) } } }), looks, () => chance)
        .all[2]!
    const asked = drawnPasses(machineOf({}), looks, never).all[2]!
    expect(ofColumn({ state: 'sticky', stays: 0.25 }, 0.7)).toBe(asked)
    expect(ofColumn({ state: 'sticky', stays: 0.25 }, 0.8)).toBe(0)
    expect(ofColumn({ state: 'other' }, 0.4)).toBe(0b1111)
    expect(ofColumn({ state: 'other' }, 0.6)).toBe(0)
  })

  test('shows pushes that fail at times on some of a column’s needles', () => {
    const passes = (certainty: number) =>
      drawnPasses(machineOf({ strips: { 1: { columns: columnsWith(0, { certainty }) } } }), looks, never)
    const asked = passes(1).all[0]!
    for (const certainty of [0.11, 0.94]) {
      expect(passes(certainty).some[0]).toBe(asked)
      expect(passes(certainty).all[0]).toBe(0)
    }
    for (const certainty of [0.1, 0.95]) {
      expect(passes(certainty).some[0]).toBe(0)
      expect(passes(certainty).all[0]).toBe(asked)
    }
  })

  test('has as many needles late by a worn bar as the model has, on average', () => {
    const worn = machineOf({ retainer: 7 })
    const fast = looks.map((look) => ({ ...look, view: { ...look.view, speed: 900 } }))
    const { late } = drawnPasses(worn, fast, never)
    expect([...drawnPasses(machineOf({}), fast, never).late]).toEqual([0, 0, 0, 0])
    expect(late[0]).toBe(0)
    const counts = Array.from({ length: 12 }, (_, seed) => {
      const scenario = { ...scenarioIn(fast[1]!.view, [faultOf('retainer.worn=15')]), seed: seed + 1 }
      return startRun(scenario)
        .passOf(2)
        .came.filter((came) => came === 'selected').length
    })
    const mean = counts.reduce((sum, one) => sum + one, 0) / counts.length
    expect(Math.abs(late[1]! / mean - 1)).toBeLessThan(0.1)
    expect(drawnPasses(machineOf({ retainer: 7, state: wide('carriage.plain') }), fast, never).late[1]).toBe(
      0,
    )
  })
})

describe('what is wrong with a drawn machine', () => {
  test('is named by strip and column, of what no look parts one at random', () => {
    const strip: DrawnStrip = {
      state: 'slow',
      slow: 2,
      columns: [
        { ...sound, state: 'high' },
        { ...sound, state: 'sticky', stays: 0.75 },
        { ...sound, state: 'over' },
      ],
    }
    expect(stripCausesOf(3, strip, never)).toEqual([
      'strip.4.slow=300',
      'pin.4.high',
      'pin.12.sticky=0.75',
      'pin.20.over',
    ])
    expect(stripCausesOf(0, { ...rightStrip, state: 'over' }, never)).toEqual(['strip.1.over'])
    expect(columnCause(7, { ...sound, state: 'dead' }, () => 0.49)).toEqual(['pin.7.low'])
    expect(columnCause(7, { ...sound, state: 'dead' }, () => 0.5)).toEqual(['rocker.7.dead'])
    expect(columnCause(7, { ...sound, state: 'other' }, never)).toEqual(['other'])
    for (const state of ['sound', 'worn', 'hole'] as const)
      expect(columnCause(7, { ...sound, state }, never)).toEqual([])
  })

  test('is one label for what is alike but for amounts', () => {
    const machines = [
      machineOf({}),
      machineOf({ retainer: 2 }),
      machineOf({ retainer: 5, strips: { 2: { state: 'seized' } } }),
      machineOf({ state: wide('belt.off'), strips: { 2: { state: 'slow' } } }),
    ]
    const [ofBed, first, second] = componentsOf(machines, 1)
    expect([...ofBed!.labels]).toEqual([0, 1, 1, 2])
    expect(ofBed!.causes).toEqual([[], ['retainer.worn=6'], ['belt.off']])
    expect([...first!.labels]).toEqual([0, 0, 0, 0])
    expect([...second!.labels]).toEqual([0, 0, 1, 2])
    expect(second!.causes).toEqual([[], ['strip.2.seized'], ['strip.2.slow=300']])
  })
})
