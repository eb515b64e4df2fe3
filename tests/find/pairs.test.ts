import { describe, expect, test } from 'vitest'
import type { Entry } from '@/find/dictionary.ts'
import { reachOf } from '@/find/entries.ts'
import { observationOf } from '@/find/evidence.ts'
import { codes, packChange } from '@/find/packed-change.ts'
import { type Pair, plainPairs } from '@/find/pairs.ts'
import { settingOf, type Shown } from '@/find/shown.ts'
import { soundBeds } from '@/find/sound.ts'
import type { FaultClass } from '@/find/fault-class.ts'
import { toNeedle } from '@/mechanism/indices.ts'
import { faultOf } from '@/mechanism/fault.ts'
import { needleName, usualPlace } from '@/mechanism/bed.ts'

// Units made up by hand, so that each rule for pairing them stands alone.
const nothing: Shown = { changed: new Uint16Array(0), chance: 0 }
const entryOf = (id: string): Entry => ({
  fault: faultOf(id),
  id,
  reach: reachOf(faultOf(id), usualPlace),
  shown: [nothing],
  key: '',
})

/** Faults in one class, with its gain and its weight. */
const faultClass = (ids: string, gain: number, weight = 1, shown: Shown = nothing): FaultClass => ({
  entries: ids.split(' ').map(entryOf),
  weight,
  shown: [shown],
  key: ids,
  gain,
})
const changing = (...needles: number[]): Shown => ({
  changed: Uint16Array.from(needles, (needle) => packChange(needle, codes.plain)),
  chance: 0,
})

const namesOf = (pairs: readonly Pair[]): string[] =>
  pairs.map(({ ways }) => ways.map((way) => way.map(({ id }) => id).join(' + ')).join(', '))

describe('two faults that reach different needles', () => {
  const apart = (...faultClasses: FaultClass[]): string[] => namesOf(plainPairs(faultClasses, []))

  test('show together what each shows alone, and explain what both explain', () => {
    const [pair] = plainPairs(
      [
        faultClass('strip.3.seized', 7, 0.5, changing(9, 30)),
        faultClass('pin.5.low rocker.5.dead', 6, 0.25, changing(1, 20)),
      ],
      [],
    )
    expect(namesOf([pair!])).toEqual(['strip.3.seized + pin.5.low, strip.3.seized + rocker.5.dead'])
    expect(pair).toMatchObject({ gain: 13, weight: 0.125 })
    expect(pair!.shown).toEqual([changing(1, 9, 20, 30)])
  })

  test.each([
    ['of two strips', 'strip.3.seized', 'strip.4.seized', true],
    ['of one strip', 'strip.3.seized', 'pin.11.low', false],
    ['a strip and a needle of it', 'strip.3.seized', 'needle.R3.gone', false],
    ['a needle and its strip', 'needle.R3.gone', 'strip.3.seized', false],
    ['a strip and a needle of another', 'strip.3.seized', 'needle.R4.gone', true],
    ['two needles of one strip', 'needle.R3.gone', 'catch.R11.broken', true],
    ['one needle twice', 'needle.R3.gone', 'catch.R3.broken', false],
    ['a strip and the bed', 'strip.3.seized', 'gate.1.low=0.5', false],
    ['a strip and the row', 'strip.3.seized', 'pawl.right', false],
  ])('%s: %s and %s, %j', (_, one, other, areApart) => {
    expect(apart(faultClass(one, 9), faultClass(other, 8))).toEqual(areApart ? [`${one} + ${other}`] : [])
  })

  test('must both make the evidence likelier, by more than 1', () => {
    const [first, second] = [faultClass('strip.3.seized', 9), 'strip.4.seized']
    expect(apart(first, faultClass(second, 1))).toEqual([])
    expect(apart(first, faultClass(second, 1.001))).toHaveLength(1)
  })

  test('come the likeliest first, by gain and by weight', () => {
    const faultClasses = [
      faultClass('strip.1.seized', 10, 0.01),
      faultClass('strip.2.seized', 9, 1),
      faultClass('strip.3.seized', 8, 0.001),
      faultClass('strip.4.seized', 7, 1),
    ]
    expect(apart(...faultClasses)).toEqual([
      'strip.2.seized + strip.4.seized',
      'strip.2.seized + strip.1.seized',
      'strip.2.seized + strip.3.seized',
      'strip.4.seized + strip.1.seized',
      'strip.4.seized + strip.3.seized',
      'strip.1.seized + strip.3.seized',
    ])
  })

  test('are left out where they lag by 25 or more behind the best of all', () => {
    const at = (second: number, third: number): string[] =>
      apart(
        faultClass('strip.1.seized', 100),
        faultClass('strip.2.seized', second),
        faultClass('strip.3.seized', third, Math.exp(2)),
      )
    expect(at(90, 63.1)).toEqual(['strip.1.seized + strip.2.seized', 'strip.1.seized + strip.3.seized'])
    expect(at(90, 62.9)).toEqual(['strip.1.seized + strip.2.seized'])
    expect(at(90, 20)).toEqual(['strip.1.seized + strip.2.seized'])
    expect(
      apart(
        faultClass('strip.1.seized', 100),
        faultClass('strip.2.seized', 90),
        faultClass('strip.3.seized', 65),
      ),
    ).toHaveLength(1)
  })

  test('are measured by the best that can be so, not by the two likeliest of one strip', () => {
    const pairs = apart(
      faultClass('strip.3.seized', 100),
      faultClass('pin.3.low', 99),
      faultClass('strip.4.seized', 60),
      faultClass('strip.5.seized', 36),
    )
    expect(pairs).toEqual([
      'strip.3.seized + strip.4.seized',
      'strip.3.seized + strip.5.seized',
      'pin.3.low + strip.4.seized',
    ])
  })

  test('are looked for among the likeliest 150', () => {
    const faultClasses = Array.from({ length: 152 }, (_, n) =>
      faultClass(`needle.${needleName(toNeedle(n))}.gone`, 20 - n / 100),
    )
    const pairs = apart(...faultClasses.toReversed())
    expect(pairs).toHaveLength((150 * 149) / 2)
    expect(pairs.join()).not.toContain('needle.R51.gone')
    expect(pairs.join()).toContain('needle.R50.gone')
  })

  test('are none where there is one or nothing', () => {
    expect([apart(), apart(faultClass('strip.3.seized', 9))]).toEqual([[], []])
  })
})

describe('a worn retainer bar with another fault', () => {
  const slip = 0.01
  const setting = settingOf({ card: [0xffffff], pass: 1, speed: 500, shift: 0, ...usualPlace }, soundBeds())
  /** All needles selected but the first so many. */
  const missing = (count: number) => [observationOf(setting, 'p'.repeat(count).padEnd(200, 's'), slip)]
  const late = 0.25
  const bar = (gain: number): FaultClass =>
    faultClass('retainer.worn=12', gain, 0.5, { ...nothing, chance: late })
  const upTo = (count: number): number[] => Array.from({ length: count }, (_, n) => n)
  /** By how much a needle predicted plain, late by chance, makes its note likelier. */
  const gainEach = Math.log(late * (slip / 2) + (1 - late) * (1 - slip)) - Math.log(slip / 2)

  test('leaves plain what the other does, but each needle late by its chance', () => {
    const [pair] = plainPairs(
      [bar(3), faultClass('pin.5.low rocker.5.dead', -4, 0.25, changing(0, 1, 2))],
      missing(5),
    )
    expect(namesOf([pair!])).toEqual(['retainer.worn=12 + pin.5.low, retainer.worn=12 + rocker.5.dead'])
    expect(pair!.shown).toEqual([{ ...changing(0, 1, 2), chance: late }])
    expect(pair!.weight).toBe(0.125)
    expect(pair!.gain).toBeCloseTo(3 + 3 * gainEach, 10)
  })

  test.each([
    ['strip.3.seized', true],
    ['needle.R3.bent', true],
    ['pawl.right', true],
    ['gate.1.low=0.5', false],
    ['retainer.worn=25', false],
  ])('is tried with what reaches a strip, a needle or the row: %s, %j', (id, isTried) => {
    const pairs = plainPairs([bar(3), faultClass(id, -4, 1, changing(0))], missing(1))
    expect(namesOf(pairs)).toEqual(isTried ? [`retainer.worn=12 + ${id}`] : [])
  })

  test('must explain something by itself, and the other something more', () => {
    const other = faultClass('pin.5.low', -4, 1, changing(0))
    expect(plainPairs([bar(1), other], missing(1))).toEqual([])
    expect(plainPairs([bar(1.001), other], missing(1))).toHaveLength(1)
    // One explained and three against add up to less than 1; nothing changed adds nothing.
    expect(
      plainPairs([bar(9), faultClass('pin.5.low', -4, 1, changing(0, 197, 198, 199))], missing(1)),
    ).toEqual([])
    expect(plainPairs([bar(9), faultClass('pin.5.low', -4)], missing(1))).toEqual([])
  })

  test('is tried with the 40 that together explain most, those first', () => {
    const strips = upTo(45).map((n) =>
      faultClass(`needle.${needleName(toNeedle(n))}.gone`, -4, 1, changing(...upTo(1 + ((n * 7) % 45)))),
    )
    const pairs = plainPairs([bar(9), ...strips], missing(45))
    expect(pairs).toHaveLength(40)
    expect(pairs.map(({ shown }) => shown[0]!.changed.length)).toEqual(upTo(40).map((n) => 45 - n))
  })
})
