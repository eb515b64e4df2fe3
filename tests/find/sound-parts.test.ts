import { describe, expect, test } from 'vitest'
import { inferWhole } from '@/find/infer.ts'
import { lettersOf } from '@/find/bed-letters.ts'
import { type Query, viewsOfQuery } from '@/find/query.ts'
import { type ServingPart, type SoundPart, soundParts } from '@/find/sound-parts.ts'
import { scenarioIn } from '@/find/view.ts'
import { needleName } from '@/mechanism/bed.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'
import { allNeedles } from '@/mechanism/indices.ts'
import { randomCard } from './make.ts'
import { mixedPasses, notedQuery } from './noted.ts'

const card = randomCard(6, 17)
const passes = mixedPasses(card.length, 6)

const partsOf = (query: Query): SoundPart[] => soundParts(query, inferWhole(query).finding)
const partsWith = (...ids: FaultId[]): SoundPart[] => partsOf(notedQuery(card, passes, ids))
const rightOf = (parts: readonly SoundPart[], part: ServingPart): readonly number[] =>
  parts.find((one) => one.part === part)!.right
const numbers = (count: number, ...but: number[]): number[] =>
  Array.from({ length: count }, (_, n) => n + 1).filter((n) => !but.includes(n))

describe('what of a machine may serve others', { timeout: 120_000 }, () => {
  test('is all that can be seen of one that came out right in every pass', () => {
    const parts = partsWith()
    expect(rightOf(parts, 'needle')).toEqual(numbers(200))
    expect(rightOf(parts, 'catch')).toEqual(numbers(200))
    expect(rightOf(parts, 'strip')).toEqual(numbers(8))
    expect(rightOf(parts, 'pin')).toEqual(numbers(24))
    expect(rightOf(parts, 'pawl')).toEqual([1])
    expect(parts.map(({ of }) => of)).toEqual([200, 200, 8, 24, 24, 1, 1, 1, 1])
  })

  test('leaves out a seized strip, and whatever it hides', () => {
    const parts = partsWith('strip.3.seized')
    expect(rightOf(parts, 'strip')).toEqual(numbers(8, 3))
    expect(rightOf(parts, 'pin')).toEqual(numbers(24, 3, 11, 19))
    expect(rightOf(parts, 'rocker')).toEqual(numbers(24, 3, 11, 19))
    const hidden = allNeedles.filter((needle) => !rightOf(parts, 'catch').includes(needle + 1))
    expect(hidden).toHaveLength(25)
    expect(hidden.map(needleName)).toContain('R3')
    // A needle that is never selected still shows that it is there, but not that it is straight.
    expect(rightOf(parts, 'needle')).toEqual(rightOf(parts, 'catch'))
  })

  test('is nothing where nothing was looked at, and no strip where the carriage was on plain', () => {
    const query = notedQuery(card, passes)
    const unseen = { ...query, passes: query.passes.map((pass) => ({ ...pass, needles: '?'.repeat(200) })) }
    expect(partsOf(unseen).flatMap(({ right }) => right)).toEqual([])
    const plain = partsWith('carriage.plain')
    expect(rightOf(plain, 'strip')).toEqual([])
    expect(rightOf(plain, 'pin')).toEqual([])
  })

  test('is no needle that nobody looked at', () => {
    const query = notedQuery(card, passes)
    const half = {
      ...query,
      passes: query.passes.map((pass) => ({
        ...pass,
        needles: pass.needles.slice(0, 100) + '?'.repeat(100),
      })),
    }
    expect(rightOf(partsOf(half), 'needle')).toEqual(numbers(100))
  })

  test('would have shown in what was noted, run by the model with each part wrong', () => {
    const ids: FaultId[] = ['strip.3.seized', 'pin.5.low']
    const query = notedQuery(card, passes, ids)
    const parts = partsOf(query)
    const isDifferent = (id: FaultId): boolean => {
      const faults = [...ids, id].map(faultOf)
      return viewsOfQuery(query).some(
        (view, n) =>
          lettersOf(startRun(scenarioIn(view, faults)).passOf(view.pass)) !== query.passes[n]!.needles,
      )
    }
    for (const strip of rightOf(parts, 'strip')) expect(isDifferent(`strip.${strip}.seized`)).toBe(true)
    for (const column of rightOf(parts, 'pin')) expect(isDifferent(`pin.${column}.high`)).toBe(true)
    for (const column of numbers(24).filter((n) => !rightOf(parts, 'rocker').includes(n)))
      expect([3, 5, 11, 19]).toContain(column)
    for (const number of rightOf(parts, 'catch').filter((_, n) => n % 20 === 0))
      expect(isDifferent(`catch.${needleName(allNeedles[number - 1]!)}.broken`)).toBe(true)
  })
})
