import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { needleName } from '@/mechanism/bed.ts'
import { partOfFault } from '@/mechanism/fault.ts'
import { type FaultKindName, faultKinds, type Stage, stages } from '@/mechanism/fault-kinds.ts'
import { nothingOwn } from '@/mechanism/own.ts'
import { startRun } from '@/mechanism/pass.ts'
import type { Departure } from '@/mechanism/reason.ts'
import { needlesBetween, ofNeedle, toNeedle } from '@/mechanism/indices.ts'
import { cardsOrNone, faultAmong, faultsAmong, passes, scenarios, without } from './arbitraries.ts'
import { check } from './check.ts'
import { columnAt, stripAt } from './trade.ts'

/** The parts that each stage may blame for a needle in a pass of this way, with column 1 at needle `one`. */
const parts: Record<Stage, (needle: number, way: 1 | -1, one: number) => string[]> = {
  card: () => ['card', 'pawl', 'pawl.right', 'pawl.left', 'turn', 'lever', 'belt'],
  pin: (needle, _, one) => [0, 8, 16].map((on) => `pin.${((columnAt(needle, one) - 1 + on) % 24) + 1}`),
  sweep: () => ['sweep', 'belt'],
  rocker: (needle, _, one) => [
    'pivots',
    ...[0, 8, 16].map((on) => `rocker.${((columnAt(needle, one) - 1 + on) % 24) + 1}`),
  ],
  strip: (needle, _, one) => [`strip.${stripAt(needle, one)}`],
  hold: (needle, way) => [
    `catch.${needleName(toNeedle(needle))}`,
    `needle.${needleName(toNeedle(needle))}`,
    way === 1 ? 'presser.right' : 'presser.left',
    ...['carriage', 'belt'],
  ],
  gate: (needle) => ['gate.1', 'gate.2', 'retainer', `needle.${needleName(toNeedle(needle))}`],
}

const onCard = { card: cardsOrNone }

test('the departures are just the needles in use that came otherwise than asked, from the left', () => {
  check(
    fc.property(scenarios(), passes, (scenario, number) => {
      const { came, asked, departures } = startRun(scenario).passOf(number)
      const { first, last } = scenario.bed
      const others = needlesBetween(first, last).filter((i) => ofNeedle(came, i) !== ofNeedle(asked, i))
      expect(departures.map(({ needle }) => needle)).toEqual(others)
      for (const { needle, ...departure } of departures)
        expect([departure.asked, departure.came]).toEqual([ofNeedle(asked, needle), ofNeedle(came, needle)])
    }),
    300,
  )
})

test('each departure names a stage of the chain, and a part of that stage that this needle depends on', () => {
  check(
    fc.property(scenarios(), passes, (scenario, number) => {
      const { departures, way } = startRun(scenario).passOf(number)
      for (const { needle, column, stage, part } of departures) {
        expect(column).toBe(columnAt(needle, scenario.columnOne))
        expect(stages).toContain(stage)
        expect(parts[stage](needle, way, scenario.columnOne)).toContain(part)
      }
    }),
    300,
  )
})

describe('in a machine without wear, each departure names a part that is at fault', () => {
  const blamed = ({ departures }: { departures: readonly Departure[] }): string[] => [
    ...new Set(departures.map(({ part }) => part)),
  ]

  /** A sweep that is early lets go of strips too early, too; a belt not engaged leaves the card where it is. */
  const stagesOf = (kind: FaultKindName): Stage[] => {
    const { stage } = faultKinds[kind]
    if (kind === 'belt.off') return [stage, 'card']
    return kind === 'belt.timing' || kind === 'belt.slack' ? [stage, 'hold'] : [stage]
  }

  test('and at its stage, where there is one fault', () => {
    const one = scenarios({
      ...onCard,
      own: fc.constant(nothingOwn),
      wear: fc.constant(0),
      faults: fc.array(faultAmong(without()), { minLength: 1, maxLength: 1 }),
    })
    check(
      fc.property(one, passes, (scenario, number) => {
        const pass = startRun(scenario).passOf(number)
        const fault = scenario.faults[0]!
        expect([partOfFault(fault), ...blamed(pass)]).toEqual(
          blamed(pass).length === 0 ? [partOfFault(fault)] : [partOfFault(fault), partOfFault(fault)],
        )
        const own = stagesOf(fault.kind)
        expect(pass.departures.filter(({ stage }) => !own.includes(stage))).toEqual([])
      }),
      2000,
    )
  })

  const several = (among: readonly FaultKindName[]): void => {
    const some = scenarios({
      ...onCard,
      own: fc.constant(nothingOwn),
      wear: fc.constant(0),
      faults: faultsAmong(among, 8),
    })
    check(
      fc.property(some, passes, (scenario, number) => {
        const faulty: string[] = scenario.faults.map(partOfFault)
        expect(blamed(startRun(scenario).passOf(number)).filter((part) => !faulty.includes(part))).toEqual([])
      }),
      1000,
    )
  }

  test('where there are several', () => several(without('belt.timing', 'belt.slack')))

  test('where there are several and the belt is out of step', () => several(without()))
})
