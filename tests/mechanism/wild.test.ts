import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dimensionsOf } from '@/mechanism/own.ts'
import { type Frame, frameAt } from '@/mechanism/frame.ts'
import { chanceOfSelection } from '@/mechanism/chance.ts'
import { leastMargin, margins } from '@/mechanism/margins.ts'
import { startRun } from '@/mechanism/pass.ts'
import { needleAtSlot } from '@/mechanism/indices.ts'
import { faultsAmong, kinds, passes, scenarios, ways } from './arbitraries.ts'
import { check } from './check.ts'

const wild = scenarios({
  faults: faultsAmong(kinds, 40),
  wear: fc.double({ min: 0, max: 1, noNaN: true }),
})
const places = fc.double({ min: -12, max: 211, noNaN: true })
const farPasses = fc.oneof(passes, fc.integer({ min: 1, max: 9999 }))

/** The least and the most of some numbers; NaN where one of them is none. */
const ends = (numbers: Iterable<number>): [number, number] => {
  const all = [...numbers]
  return [Math.min(...all), Math.max(...all)]
}

const expectWithin = (numbers: Iterable<number>, least: number, most: number): void => {
  const [low, high] = ends(numbers)
  expect(low).toBeGreaterThanOrEqual(least)
  expect(high).toBeLessThanOrEqual(most)
}

describe('with any faults, wear, speed and bed at once', () => {
  test('a pass gives each needle one of three outcomes, and each needle out of use none', () => {
    check(
      fc.property(wild, farPasses, (scenario, number) => {
        const pass = startRun(scenario).passOf(number)
        expect(pass.came).toHaveLength(scenario.own.needles ?? 200)
        for (const [slot, came] of pass.came.entries()) {
          const needle = needleAtSlot(slot, pass.came.length)
          expect(['selected', 'plain', 'unmoved']).toContain(came)
          if (needle < scenario.bed.first || needle > scenario.bed.last) expect(came).toBe('unmoved')
        }
        expect(pass.row === null).toBe(scenario.card === null)
        if (scenario.card && pass.row !== null) expectWithin([pass.row], 1, scenario.card.length)
      }),
    )
  })

  test('every part of a frame stays where its own limits put it', () => {
    check(
      fc.property(wild, farPasses, places, (scenario, number, x) => {
        const frame: Frame = frameAt(startRun(scenario), number, x)
        // Scatter at wear 1 has deviations of 0.15 mm for pins and 0.07 mm for butts and catches: six of them.
        const { pinLow, pinHigh, sweepThrow, ratio, ...built } = dimensionsOf(scenario.own)
        const dip = Math.max(built.presserRight, built.presserLeft)
        expectWithin(frame.pinHeights, pinLow - 0.9, pinHigh + 0.9)
        expectWithin(frame.pinLeans, 0, sweepThrow)
        expectWithin(frame.rockerOuts, 0, ratio * sweepThrow)
        expectWithin(frame.stripShifts, 0, ratio * sweepThrow)
        expectWithin(frame.buttHeights, -dip - 0.42, 0.42)
        expectWithin(frame.needleTravels, -3, 6.5)
        expectWithin([frame.sweepAt], 0.5, 24.5)
        expectWithin([frame.column], 1, 24)
        expect(Number.isInteger(frame.column)).toBe(true)
      }),
      300,
    )
  })

  test('a strip that is free to move stands at least where each of its rockers pushes it', () => {
    check(
      fc.property(wild, passes, places, (scenario, number, x) => {
        const { rockerOuts, stripShifts } = frameAt(startRun(scenario), number, x)
        const stuck = scenario.faults.flatMap(({ kind, at }) =>
          kind === 'strip.seized' || kind === 'strip.over' ? [at[0] - 1] : [],
        )
        for (const [c, out] of rockerOuts.entries())
          if (!stuck.includes(c % 8)) expect(stripShifts[c % 8]).toBeGreaterThanOrEqual(out)
      }),
      200,
    )
  })

  test('margins and the chance of selection are numbers, the chance between 0 and 1', () => {
    check(
      fc.property(wild, ways, (scenario, way) => {
        const run = startRun(scenario)
        const all = margins(run, way)
        for (const { mm } of all) expect(Number.isFinite(mm)).toBe(true)
        expect(leastMargin(all).mm).toBe(Math.min(...all.map(({ mm }) => mm)))
        expectWithin([chanceOfSelection(run, way)], 0, 1)
      }),
    )
  })
})
