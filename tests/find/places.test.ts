import { describe, expect, test } from 'vitest'
import { byHandOf } from '@/find/by-hand.ts'
import { columnChances, needleChances, stripChances } from '@/find/chances.ts'
import { placesOf } from '@/find/places.ts'
import { Tally } from '@/find/tally.ts'
import { posteriorOf } from './blank-posterior.ts'

describe('places that may be wrong', () => {
  const tally = new Tally()
  tally.add('strip.3', ['strip.3.seized'], 0.25)
  tally.add('strip.3', ['strip.3.slow=300'], 0.5)
  tally.add('strip.3', ['strip.3.seized'], 0.125)
  tally.add('column.4', ['pin.4.low', 'rocker.4.dead'], 0.2)
  tally.add('needle.R3', ['needle.R3.gone'], 0.01)
  tally.add('needle.R4', ['needle.R4.gone'], 0.0099)
  tally.add('belt', ['belt.off'], 0.9)
  tally.add('gate', ['gate.1.high=0.5'], 0)
  const places = placesOf(posteriorOf({ tally }), byHandOf([]))

  test('are the likeliest first, with their ways, but for what is hardly wrong', () => {
    expect(places.map(({ place, wrong }) => [place, wrong])).toEqual([
      ['belt', 0.9],
      ['strip.3', 0.875],
      ['column.4', 0.2],
      ['needle.R3', 0.01],
    ])
    expect(places[1]!.ways).toEqual([
      { causes: ['strip.3.slow=300'], probability: 0.5 },
      { causes: ['strip.3.seized'], probability: 0.375 },
    ])
  })

  test('have the chance of the table, under the oil and the reader that the notes speak for', () => {
    const [belt, strip, column, needle] = places
    const ofStrip = (oil: keyof typeof stripChances): number =>
      stripChances[oil].slow + stripChances[oil].seized + stripChances[oil].over
    const ofColumn = (reader: keyof typeof columnChances): number =>
      Object.values(columnChances[reader]).reduce((sum, one) => sum + one, 0)
    expect(belt!.before).toBeNull()
    expect(strip!.before).toBeCloseTo(
      0.5 * ofStrip('fresh') + 0.3 * ofStrip('old') + 0.2 * ofStrip('set'),
      12,
    )
    expect(column!.before).toBeCloseTo(
      0.5 * ofColumn('clean') + 0.3 * ofColumn('usual') + 0.2 * ofColumn('gummed'),
      12,
    )
    const { noHold, stiff, gone, other } = needleChances
    expect(needle!.before).toBeCloseTo(noHold + stiff + gone + other, 12)
  })

  test('have a way parted where a hand distinguishes its causes, and never more than all', () => {
    const felt = byHandOf([{ check: 'pins', found: null }])
    const column = placesOf(posteriorOf({ tally }), felt).find(({ place }) => place === 'column.4')!
    expect(column.ways.map(({ causes }) => causes).sort()).toEqual([['pin.4.low'], ['rocker.4.dead']])
    expect(column.ways[0]!.causes).toEqual(['rocker.4.dead'])
    expect(column.ways.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(0.2, 12)
    const [low, dead] = (['pin.4.low', 'rocker.4.dead'] as const).map((cause) =>
      felt.causes([cause], ['pin.4.low', 'rocker.4.dead']),
    )
    expect(column.ways[0]!.probability).toBeCloseTo((0.2 * dead!) / (low! + dead!), 12)
    const much = new Tally()
    much.add('sweep', ['sweep.worn=0.8'], 1 + 1e-9)
    expect(placesOf(posteriorOf({ tally: much }), byHandOf([]))[0]!.wrong).toBe(1)
  })
})
