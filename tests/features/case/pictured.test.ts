import { describe, expect, test } from 'vitest'
import { faultSceneOf } from '@/drawings/scene/fault-scene.ts'
import { faultViewOf } from '@/drawings/scene/fault-views.ts'
import { poseOf } from '@/drawings/scene/machine/pose.ts'
import { picturedOf } from '@/features/case/pictured.ts'
import { firstPictured } from '@/features/case/close-up.ts'
import { readCase } from '@/link/case.ts'
import { scenarioOf } from '@/link/state.ts'
import { columnOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { type Fault, faultId, indexKindsOf, makeFault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { type FaultKindName, faultKindNames, faultKinds, type IndexKind } from '@/mechanism/fault-kinds.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { allNeedles, toNeedle } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { startRun } from '@/mechanism/pass.ts'
import { numberedParts } from '@/words/numbered-parts.ts'
import { library } from '../../browser/model.ts'
import { trees } from '../../drawings/scene/machines.ts'

const { state: home } = readCase('card=harbour-star&end=1', library)

/** The first, one in the middle and the last of what faults are at. */
const places: Readonly<Record<IndexKind, readonly number[]>> = {
  row: [1, 5, 12],
  column: [1, 12, 24],
  strip: [1, 3, 8],
  pass: [2, 3, 4],
  needle: [at(allNeedles, 0), 95, 112, at(allNeedles, allNeedles.length - 1)],
}

const faultsOf = (kind: FaultKindName): Fault[] =>
  Array.from({ length: 4 }, (_, n) =>
    makeFault(
      kind,
      indexKindsOf(kind).map((each) => at(places[each], Math.min(n, places[each].length - 1))),
      faultKinds[kind].amount?.usual ?? null,
    ),
  )

const drawn = faultKindNames.filter((kind) => faultViewOf(kind))

describe('the picture of what is broken in a case', () => {
  test.each(drawn)('is there wherever it is, whichever way the carriage goes: %s', (kind) => {
    for (const fault of faultsOf(kind))
      for (const pass of [1, 2]) {
        const pictured = picturedOf(fault, { ...home, pass, faults: [fault] }, library)
        const state = pictured!.state
        const run = startRun(scenarioOf(state, library))
        const found = faultSceneOf(
          trees,
          poseOf(run, frameAt(run, state.pass, state.at)),
          at(state.faults, 0),
        )
        expect(numberedParts[found!.broken].faults, faultId(fault)).toContain(kind)
        expect(found!.places[0]!.points.length).toBeGreaterThan(0)
      }
  })

  test('is of a needle with the same column, where its own is outside the stretch that is drawn', () => {
    for (const needle of allNeedles) {
      const fault = makeFault('needle.gone', [needle], null)
      const found = picturedOf(fault, { ...home, faults: [fault] }, library)!
      const place = found.needle ?? needle
      expect(place).toBeGreaterThanOrEqual(100)
      expect(place).toBeLessThan(124)
      expect(columnOfNeedle(toNeedle(place), usualPlace)).toBe(columnOfNeedle(needle, usualPlace))
      expect(found.needle === null).toBe(needle >= 100 && needle < 124)
    }
  })

  test('of a hole has the row of the hole in the reader', () => {
    for (const row of [1, 2, 7]) {
      const fault = makeFault('card.torn', [row, 12], null)
      const { state } = picturedOf(fault, { ...home, pass: 3, faults: [fault] }, library)!
      expect(startRun(scenarioOf(state, library)).passOf(state.pass).row).toBe(row)
    }
  })

  test('is of the first fault that has one, alone; none of a sound machine, or of a card that is not there', () => {
    const faults = [faultOf('strip.3.seized'), faultOf('pin.7.low')]
    const has = (kind: FaultKindName): boolean => faultViewOf(kind) !== null
    const first = firstPictured({ ...home, faults }, library, has)!
    expect(first).toBe(faults[0])
    expect(picturedOf(first, { ...home, faults }, library)!.state.faults.map(faultId)).toEqual([
      'strip.3.seized',
    ])
    expect(firstPictured({ ...home, faults }, library, (kind) => kind === 'pin.low')).toBe(faults[1])
    expect(firstPictured({ ...home, faults: [] }, library, has)).toBeNull()
    const cardless = { ...home, card: { kind: 'none' } as const }
    expect(firstPictured({ ...cardless, faults: [faultOf('card.locked')] }, library, has)).toBeNull()
    expect(firstPictured({ ...cardless, faults: [faultOf('card.locked'), ...faults] }, library, has)).toBe(
      faults[0],
    )
  })
})
