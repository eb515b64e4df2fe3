import { expect, test } from 'vitest'
import { allPlaces, needleOfPlace, placeOfFault } from '@/find/place.ts'
import { makeFault, indexKindsOf } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type FaultKindName, faultKindNames, faultKinds } from '@/mechanism/fault-kinds.ts'

test('there are 9 places of the whole bed, 8 strips, 24 columns and 250 needles, as many as the longest bed has, each once', () => {
  expect(new Set(allPlaces).size).toBe(291)
  expect(allPlaces.slice(0, 10).at(-1)).toBe('strip.1')
  expect(allPlaces.filter((place) => needleOfPlace(place) !== null)).toHaveLength(250)
  expect([needleOfPlace('needle.L100'), needleOfPlace('needle.R1'), needleOfPlace('strip.1')]).toEqual([
    0,
    100,
    null,
  ])
})

test.each([
  ['strip.3.seized', 'strip.3'],
  ['strip.8.slow=120', 'strip.8'],
  ['pin.24.sticky=0.5', 'column.24'],
  ['pin.2.over', 'column.2'],
  ['rocker.9.worn=0.8', 'column.9'],
  ['catch.R3.broken', 'needle.R3'],
  ['needle.L100.stiff', 'needle.L100'],
  ['card.torn.1.2', 'card'],
  ['card.locked', 'card'],
  ['turn.twice', 'turn'],
  ['turn.short.4', 'turn'],
  ['pawl.left', 'turn'],
  ['pawl.double', 'turn'],
  ['pawl.skips.3', 'turn'],
  ['carriage.plain', 'carriage'],
  ['belt.slack=2', 'belt'],
  ['presser.left.worn=0.8', 'presser'],
  ['gate.1.high=0.5', 'gate'],
  ['sweep.worn=0.8', 'sweep'],
  ['retainer.worn=8', 'retainer'],
  ['pivots.loose=0.4', 'pivots'],
])('%s is at %s', (id, place) => {
  expect(placeOfFault(faultOf(id))).toBe(place)
})

test('every kind of fault is at a place', () => {
  const one = (kind: FaultKindName) =>
    makeFault(
      kind,
      indexKindsOf(kind).map((index) => (index === 'pass' ? 2 : 1)),
      faultKinds[kind].amount?.usual ?? null,
    )
  for (const kind of faultKindNames) expect(allPlaces).toContain(placeOfFault(one(kind)))
})
