import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dimensions } from '@/mechanism/dimensions.ts'
import {
  canonicalOwn,
  dimensionsOf,
  disordered,
  nothingOwn,
  type Own,
  ownDimensions,
  ownNames,
} from '@/mechanism/own.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { allHoles } from './cards.ts'
import { owns } from './arbitraries.ts'
import { check } from './check.ts'

const measured = (own: Own) => startRun({ ...soundScenario(allHoles), own })

describe('a machine of which something was measured', () => {
  test('is the training machine where nothing was', () => {
    expect(dimensionsOf(nothingOwn)).toEqual(dimensions)
    expect(canonicalOwn({ pitch: 4.5, gate1: 0.45 })).toBe(nothingOwn)
  })

  test('has what was measured, and the rest from the training machine', () => {
    check(
      fc.property(owns, (own) => {
        const all = dimensionsOf(own)
        for (const name of ownNames) expect(all[name]).toBe(own[name] ?? dimensions[name])
        expect([all.columns, all.strips, all.speed]).toEqual([24, 8, 500])
      }),
    )
  })

  test('can have every value of the training machine, and none of its pairs is the wrong way round', () => {
    for (const name of ownNames) {
      expect(dimensions[name]).toBeGreaterThanOrEqual(ownDimensions[name].least)
      expect(dimensions[name]).toBeLessThanOrEqual(ownDimensions[name].most)
    }
    expect(disordered(nothingOwn)).toEqual([])
    expect(disordered({ pinLow: 3 })).toEqual([['pinLow', 'pinHigh']])
  })

  test('selects nothing once its presser dips less than its catches are deep, that way only', () => {
    const { came } = measured({ presserLeft: 0.89 }).passOf(2)
    expect(new Set(came)).toEqual(new Set(['plain']))
    expect(new Set(measured({ presserLeft: 0.89 }).passOf(1).came)).toEqual(new Set(['selected']))
    expect(new Set(measured({ presserLeft: 0.9 }).passOf(2).came)).toEqual(new Set(['selected']))
  })

  test.each<[Own, number]>([
    // sweepThrow · (pinHigh - sweepEdge) / fullBite must give reach + lost: 1.4 of 2 mm, so 0.28 of 0.4 mm.
    [{ sweepEdge: 2.72 }, 2.71],
    // ratio · sweepThrow - lost must be the reach.
    [{ reach: 1.8 }, 1.79],
    // gate1 must not be below the depth at which a butt is held.
    [{ gate1: 0.9 }, 0.89],
  ])('selects up to its own edge and not beyond: %j', (own, less) => {
    const [name] = Object.keys(own) as [keyof Own]
    const beyond = measured({ [name]: (own[name] ?? 0) + 0.01 }).passOf(1).came
    expect(new Set(beyond)).toEqual(new Set(['plain']))
    expect(new Set(measured({ [name]: less }).passOf(1).came)).toEqual(new Set(['selected']))
  })

  test('has limits that are wider than what any of its tests asks for', () => {
    for (const name of ownNames) {
      const { least, most } = ownDimensions[name]
      expect(least).toBeLessThan(dimensions[name])
      expect(most).toBeGreaterThan(dimensions[name])
    }
  })
})
