import { describe, expect, test } from 'vitest'
import { bedsOf } from '@/commands/bench/truth.ts'
import { queryOf } from '@/commands/bench/notes.ts'
import { allSeized, namesAllWhereNothing } from '@/commands/bench/strip-sets.ts'
import { infer } from '@/find/infer.ts'
import { stripPlace } from '@/find/place.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { allStrips } from '@/mechanism/indices.ts'

const machineWith = (...ids: string[]) => ({ ...allSeized, faults: ids.map((id) => faultOf(id)) })
const findingOf = (machine: typeof allSeized) => infer(queryOf(machine, bedsOf(machine)))

describe('places of which one is wrong, and nothing says which', { timeout: 120_000 }, () => {
  test('are all that it may be where nothing is selected: whatever it is, the same is said', () => {
    const finding = findingOf(allSeized)
    expect(namesAllWhereNothing(finding)).toBe(true)
    expect(findingOf(machineWith('carriage.plain')).together).toEqual(finding.together)
    for (const { wrong } of finding.together) expect(wrong).toBeGreaterThan(0.9)
  })

  test('are few where the strips are left out, and the bar and the pivots, of which nothing is seen', () => {
    const [few] = findingOf(machineWith('belt.off')).together
    expect(few!.places).toEqual(['carriage', 'belt', 'gate', 'sweep'])
  })

  test('have not all strips where one strip or one way alone is selected', () => {
    const hasAll = (...ids: string[]): boolean =>
      findingOf(machineWith(...ids)).together.some(({ places }) =>
        allStrips.every((strip) => places.includes(stripPlace(strip))),
      )
    expect(hasAll(...[1, 2, 3, 4, 5, 6, 7].map((strip) => `strip.${strip}.seized`))).toBe(false)
    expect(hasAll('presser.left.worn=0.9')).toBe(false)
  })

  test('are none on a sound bed', () => {
    expect(findingOf(machineWith()).together).toEqual([])
  })
})
