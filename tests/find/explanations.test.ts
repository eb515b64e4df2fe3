import { describe, expect, test } from 'vitest'
import { pivotChances, retainerChances } from '@/find/chances.ts'
import type { PossibleBed } from '@/find/close-search.ts'
import { explanations } from '@/find/explanations.ts'
import type { PlaceFinding } from '@/find/finding.ts'
import type { Place } from '@/find/place.ts'
import type { Posterior } from '@/find/posterior.ts'
import { chanceLog } from '@/find/rough-search.ts'
import { togetherOf } from '@/find/together.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, rightBed, type WideState } from '@/find/wide-states.ts'
import { posteriorOf } from './blank-posterior.ts'
import { summed, still } from './one-strip.ts'

const { sums } = summed(still, 'firm', [0])
const { setting } = sums.frame
/** How likely the notes are with all strips seized, as a logarithm. */
const seized = sums.strips.reduce((sum, one) => sum + one.log + Math.log(one.seized), 0)

const causes = wideCauses()
const stateOf = (id: string): WideState => alone(causes.find((one) => one.causes[0] === id)!)
/** A bed that makes the notes so likely, as a logarithm, beside all strips seized. */
const bedOf = (state: WideState, log: number): PossibleBed => ({
  state,
  sums,
  bars: [{ retainer: -1, share: 1 }],
  logs: new Float64Array(),
  log: chanceLog(setting, state) + seized + log,
})
const strips = Array.from({ length: 8 }, (_, n): Place => `strip.${n + 1}` as Place)

describe('what explains that nothing is selected', () => {
  test('is what does so as well as all strips seized, and those', () => {
    const [belt, carriage, gate] = ['belt.off', 'carriage.plain', 'gate.1.low=1.2'].map(stateOf)
    const beds = [bedOf(rightBed, -6), bedOf(belt!, 0), bedOf(carriage!, -1.5), bedOf(gate!, -2.5)]
    expect(explanations(setting, beds)).toEqual(['belt', 'carriage', ...strips])
    // Two bars of one state count together.
    expect(explanations(setting, [...beds, bedOf(gate!, -2.5)])).toEqual([
      'belt',
      'carriage',
      'gate',
      ...strips,
    ])
  })

  test('is nothing where a right bed explains it, or all strips seized explain much less than the best', () => {
    const belt = stateOf('belt.off')
    expect(explanations(setting, [bedOf(rightBed, -4.8), bedOf(belt, 0)])).toEqual([])
    expect(explanations(setting, [bedOf(rightBed, -5.2), bedOf(belt, 0)])).toEqual(['belt', ...strips])
    expect(explanations(setting, [bedOf(rightBed, -9), bedOf(belt, 2.2)])).toEqual([])
    expect(explanations(setting, [bedOf(rightBed, -9), bedOf(belt, 1.8)])).toEqual(['belt', ...strips])
    expect(explanations(setting, [bedOf(belt, 0)])).toEqual([])
  })
})

describe('places of which one is wrong, and nothing says which', () => {
  const placeOf = (place: Place, wrong: number): PlaceFinding => ({ place, wrong, before: null, ways: [] })
  const beds = [bedOf(rightBed, 3)]
  const together = (places: readonly PlaceFinding[], more: Partial<Posterior>, of = beds) =>
    togetherOf(posteriorOf(more), places, setting, of)

  test('are a strip and its columns', () => {
    const rightStrips = new Float64Array(8).fill(1)
    rightStrips[2] = 0.1
    const places = [placeOf('strip.3', 0.3), placeOf('column.3', 0.5), placeOf('column.19', 0.02)]
    expect(together(places, { rightStrips })).toEqual([{ places: ['column.3', 'strip.3'], wrong: 0.9 }])
    expect(together([placeOf('strip.3', 0.3)], { rightStrips })).toEqual([])
    expect(together([placeOf('strip.3', 0.96), placeOf('column.3', 0.5)], { rightStrips })).toEqual([])
    rightStrips[2] = 0.5
    expect(together(places, { rightStrips })).toEqual([])
  })

  test('are what reaches the whole bed, if the notes speak of it', () => {
    const wide: Posterior['wide'] = [
      { places: ['belt'], weight: 0.4 },
      { places: ['carriage', 'retainer'], weight: 0.35 },
      { places: [], weight: 0.25 },
    ]
    const places = [placeOf('carriage', 0.35), placeOf('belt', 0.4), placeOf('gate', 0.03)]
    expect(together(places, { wide })).toEqual([{ places: ['belt', 'carriage'], wrong: 0.75 }])
    const bar = 0.5 * retainerChances.fresh + 0.3 * retainerChances.old + 0.2 * retainerChances.set
    const [few, many] = [placeOf('retainer', 1.49 * bar), placeOf('retainer', 1.51 * bar)]
    expect(together([...places, few], { wide })[0]!.places).toEqual(['belt', 'carriage'])
    expect(together([...places, many], { wide })[0]!.places).toEqual(['belt', 'carriage', 'retainer'])
    const loose = pivotChances.slice(1).reduce((sum, { chance }) => sum + chance, 0)
    expect(together([...places, placeOf('pivots', 1.49 * loose)], { wide })[0]!.places).toHaveLength(2)
    expect(together([...places, placeOf('pivots', 1.51 * loose)], { wide })[0]!.places).toHaveLength(3)
  })

  test('are those with all strips where these would explain the notes as well', () => {
    const wide: Posterior['wide'] = [
      { places: ['belt'], weight: 0.6 },
      { places: [], weight: 0.4 },
    ]
    const found = together([placeOf('belt', 0.6)], { wide }, [
      bedOf(rightBed, -6),
      bedOf(stateOf('belt.off'), 0),
    ])
    expect(found).toEqual([{ places: ['belt', ...strips], wrong: 0.6 }])
  })
})
