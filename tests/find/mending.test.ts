import { describe, expect, test } from 'vitest'
import { mendableOf, minutesOf, partsOf, placesFor, repairOfCause, type Work } from '@/find/mending.ts'
import type { Cause, Place } from '@/find/place.ts'
import { howCommon, sharesOfCauses } from '@/find/how-common.ts'
import { openingMinutes, type RepairId, repairOf } from '@/find/repairs.ts'
import { findingOf } from './finding-of.ts'

describe('what mends a cause', () => {
  test.each<[Place, Cause, RepairId | null]>([
    ['needle.R3', 'needle.R3.bent', 'needles'],
    ['needle.R3', 'catch.R3.broken', 'catches'],
    ['needle.R3', 'other', 'needles'],
    ['column.4', 'other', 'reader'],
    ['column.4', 'pin.4.sticky=0.5', 'reader'],
    ['card', 'card.out', 'card'],
    ['belt', 'belt.off', 'settings'],
    ['turn', 'turn.short.3', 'turn'],
    ['turn', 'turn.twice', 'settings'],
    ['sweep', 'other', null],
  ])('at %s, %s: %s', (place, cause, repair) => {
    expect(repairOfCause(place, cause)).toBe(repair)
  })
})

describe('causes that no look parts', () => {
  test('share their chance as they are common', () => {
    const [broken, bent] = sharesOfCauses(['catch.L7.broken', 'needle.L7.bent'])
    expect(broken! + bent!).toBeCloseTo(1, 12)
    expect(bent! / broken!).toBeCloseTo(howCommon['needle.bent'] / howCommon['catch.broken'], 12)
    expect(sharesOfCauses(['other'])).toEqual([1])
  })

  test('are mended each by its own work', () => {
    const finding = findingOf([
      {
        place: 'needle.L7',
        ways: [
          { causes: ['catch.L7.broken', 'needle.L7.bent'], probability: 0.8 },
          { causes: ['needle.L7.gone'], probability: 0.1 },
        ],
      },
      { place: 'needle.R1', ways: [{ causes: ['needle.R1.stiff'], probability: 0.95 }] },
      { place: 'column.2', ways: [{ causes: ['pin.2.low', 'rocker.2.dead'], probability: 0.3 }] },
    ])
    const mendable = mendableOf(finding)
    expect(mendable.needles.map(({ place }) => place)).toEqual(['needle.R1', 'needle.L7'])
    const [, needle] = mendable.needles
    expect(needle!.chance).toBeCloseTo(0.1 + (0.8 * 6) / 8, 9)
    expect(mendable.catches.map(({ place }) => place)).toEqual(['needle.L7'])
    expect(mendable.catches[0]!.chance).toBeCloseTo((0.8 * 2) / 8, 9)
    expect(mendable.reader.map(({ place }) => place)).toEqual(['column.2'])
    expect(mendable.reader[0]!.chance).toBeCloseTo(0.3, 9)
    expect(mendable.strips).toEqual([])
    expect(placesFor(mendable, 'needles', 0.9)).toEqual(['needle.R1'])
    expect(placesFor(mendable, 'needles', 0.01)).toEqual(['needle.R1', 'needle.L7'])
  })
})

describe('the minutes of some works', () => {
  const strips: Work = { repair: 'strips', places: ['strip.1', 'strip.2', 'strip.3'] }
  const catches: Work = { repair: 'catches', places: ['needle.R5'] }

  test('have each further place, and what has to be opened', () => {
    const { first, further } = repairOf('strips').minutes
    expect(minutesOf([strips])).toBe(openingMinutes.cover + first + 2 * further)
    expect(minutesOf([{ repair: 'settings', places: ['carriage'] }])).toBe(repairOf('settings').minutes.first)
    expect(minutesOf([])).toBe(0)
  })

  test('have what several need open once', () => {
    expect(minutesOf([strips, catches])).toBe(
      minutesOf([strips]) + minutesOf([catches]) - openingMinutes.cover,
    )
  })

  test('work without a named place takes as long as for one', () => {
    expect(minutesOf([{ repair: 'belt', places: [] }])).toBe(repairOf('belt').minutes.first)
  })
})

describe('the parts of some works', () => {
  test('are one for all places or one for each, for certain or perhaps', () => {
    const works: Work[] = [
      { repair: 'retainer', places: ['retainer'] },
      { repair: 'needles', places: ['needle.R1', 'needle.R2'] },
      { repair: 'reader', places: ['column.1', 'column.2', 'column.3'] },
    ]
    expect(partsOf(works)).toEqual([
      { part: 'retainer-bar', count: 1, isSure: true },
      { part: 'needle', count: 2, isSure: true },
      { part: 'pin', count: 3, isSure: false },
      { part: 'rocker', count: 3, isSure: false },
    ])
    expect(partsOf([{ repair: 'needles', places: [] }])).toEqual([{ part: 'needle', count: 1, isSure: true }])
  })
})
