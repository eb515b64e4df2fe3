import fc from 'fast-check'
import { expect, test } from 'vitest'
import { makeFault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { marginSlopes, type SlopeName, type Slopes } from '@/mechanism/margin-slopes.ts'
import { type MarginId, margins } from '@/mechanism/margins.ts'
import { dimensionsOf, disordered, type OwnName, ownDimensions, ownNames } from '@/mechanism/own.ts'
import { startRun } from '@/mechanism/pass.ts'
import { type Scenario, soundScenario } from '@/mechanism/scenario.ts'
import { owns, speeds, ways } from './arbitraries.ts'
import { allHoles } from './cards.ts'
import { check } from './check.ts'

type Values = Record<MarginId, number>

const marginsOf = (scenario: Scenario, way: 1 | -1): Values =>
  Object.fromEntries(margins(startRun(scenario), way).map(({ id, mm }) => [id, mm])) as Values

const withMore = (scenario: Scenario, name: SlopeName, more: number): Scenario => {
  if (name === 'slack' || name === 'timing')
    return {
      ...scenario,
      faults: scenario.faults.map((fault) =>
        fault.kind === `belt.${name}` && fault.amount !== null
          ? makeFault(fault.kind, [], fault.amount + more)
          : fault,
      ),
    }
  return { ...scenario, own: { ...scenario.own, [name]: dimensionsOf(scenario.own)[name] + more } }
}

/** Slopes from the margins a little to both sides; null at a corner, where the two sides differ. */
const sides = (
  scenario: Scenario,
  way: 1 | -1,
  name: SlopeName,
  step: number,
): Record<MarginId, number | null> => {
  const [less, here, more] = [-step, 0, step].map((by) => marginsOf(withMore(scenario, name, by), way))
  return Object.fromEntries(
    (Object.keys(here!) as MarginId[]).map((id) => {
      const [before, after] = [(here![id] - less![id]) / step, (more![id] - here![id]) / step]
      const isCorner = Math.abs(before - after) > 2e-3 * (1 + Math.abs(before))
      return [id, isCorner ? null : (before + after) / 2]
    }),
  ) as Record<MarginId, number | null>
}

const machines = fc
  .record({
    own: owns,
    oil: fc.constantFrom(4, 15, 60, 200),
    speed: speeds,
    slack: fc.double({ min: 0.01, max: 1.4, noNaN: true }),
    timing: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
  })
  .filter(({ own }) => disordered(own).length === 0)
  .map(({ own, oil, speed, slack, timing }): Scenario => ({
    ...soundScenario(allHoles),
    own: oil === 4 ? own : { ...own, stripReturn: oil },
    speed,
    faults: [makeFault('belt.slack', [], slack), makeFault('belt.timing', [], timing)],
  }))

test('each margin’s slopes are its differences between a little less and a little more', () => {
  const tally = { compared: 0, corners: 0 }
  const steep = new Set<string>()
  check(
    fc.property(machines, ways, (scenario, way) => {
      const slopes: Record<MarginId, Slopes> = marginSlopes(startRun(scenario), way)
      const names: SlopeName[] = [
        'slack',
        'timing',
        ...ownNames.filter((name: OwnName) => name !== 'sweepFlat' && name !== 'sweepRamp'),
      ]
      for (const name of names) {
        const step = name === 'slack' || name === 'timing' ? 1e-5 : 1e-5 * ownDimensions[name].most
        for (const [id, slope] of Object.entries(sides(scenario, way, name, step)) as [
          MarginId,
          number | null,
        ][]) {
          tally.compared++
          if (slope === null) tally.corners++
          else {
            expect({ id, name, slope: slopes[id][name] ?? 0 }).toEqual({
              id,
              name,
              slope: expect.closeTo(slope, 2) as number,
            })
            if (Math.abs(slope) > 1e-4) steep.add(`${id} ${name}`)
          }
        }
      }
    }),
    300,
    150,
  )
  expect(tally.corners / tally.compared).toBeLessThan(0.01)
  // Every margin depends on something, and the play of the belt on those of push and hold.
  expect([...steep]).toEqual(
    expect.arrayContaining([
      'push slack',
      'held slack',
      'push timing',
      'held timing',
      'freeOverFirst pitch',
      'held stripReturn',
      'release stripReturn',
      'release pitch',
      'release preload',
      'release slack',
    ]),
  )
})

test('of a machine with slow strips, the slowest decides whether it is home in time, the quickest how long it holds', () => {
  const slow = ['strip.3.slow=30', 'strip.5.slow=60'].map((id) => faultOf(id))
  const names: SlopeName[] = ['pitch', 'preload', 'letGo', 'lost', 'sweepThrow', 'gateLag']
  let steep = 0
  check(
    fc.property(machines, ways, (scenario, way) => {
      const oiled = { ...scenario, faults: [...scenario.faults, ...slow] }
      const slopes = marginSlopes(startRun(oiled), way)
      for (const name of names) {
        const found = sides(oiled, way, name, 1e-5)
        for (const id of ['release', 'held'] as const) {
          const slope = found[id]
          if (slope === null) continue
          expect(slopes[id][name] ?? 0).toBeCloseTo(slope, 2)
          if (Math.abs(slope) > 1e-3) steep++
        }
      }
    }),
    60,
    20,
  )
  expect(steep).toBeGreaterThan(20)
})
