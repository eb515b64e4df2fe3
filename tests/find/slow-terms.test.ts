import { describe, expect, test } from 'vitest'
import { frameOf, notedStripOf } from '@/find/frame.ts'
import { looksOf } from '@/find/looks.ts'
import type { SlowEntry } from '@/find/slow-entries.ts'
import { eachSlowTerm, type SlowDepth } from '@/find/slow-terms.ts'
import { sumSettingOf } from '@/find/sum-setting.ts'
import { wideBedOf } from '@/find/wide-bed.ts'
import { rightBed } from '@/find/wide-states.ts'
import { queryOf, type SmallLook } from './one-strip.ts'

interface Term {
  readonly key: string
  readonly size: number
  readonly isUsual: boolean
}

const usual = ['sound', 'dead', 'worn', 'over']
const isUsual = ({ whens }: SlowEntry): boolean => whens.every(({ state }) => usual.includes(state))
const entryKey = ({ whens, pushes }: SlowEntry): string =>
  `${pushes} ${whens.map(({ when, state }) => `${when}${state}`).join('+')}`

/** The terms of strip 3's sum, each once. */
const termsOf = (looks: readonly SmallLook[], depth: SlowDepth, over = 0, least = 0): Map<string, Term> => {
  const query = queryOf(looks)
  const all = looksOf(query)
  const bed = wideBedOf(rightBed, all)
  const strip = notedStripOf(frameOf(sumSettingOf(query, all), bed, -1), 2, 1, 1)
  const terms = new Map<string, Term>()
  eachSlowTerm(strip, 2, over, least, depth, (one, two, three, _, size) => {
    const entries = [one, two, three]
    const key = entries.map(entryKey).join(' | ')
    const before = terms.get(key)?.size ?? 0
    terms.set(key, { key, size: Math.max(before, size), isUsual: entries.every(isUsual) })
  })
  return terms
}

const largest = (terms: Map<string, Term>): number => Math.max(...[...terms.values()].map(({ size }) => size))

const noted: readonly (readonly [string, readonly SmallLook[]])[] = [
  ['all right', [[1, 500, 'ssssss']]],
  ['one column missed', [[1, 900, 'psspss']]],
  [
    'ghosts',
    [
      [3, 900, 'sspssp'],
      [4, 500, 'pppppp'],
    ],
  ],
]

describe.each(noted)('the terms of a slow strip: %s', (_, looks) => {
  const whole = termsOf(looks, 'whole')

  test.each([0, 1, 5])(
    'that are usual leave out nothing but what is slight, pins pushed over: %i',
    (over) => {
      const all = over === 0 ? whole : termsOf(looks, 'whole', over)
      const some = termsOf(looks, 'usual', over)
      const ordinary = [...all.values()].filter((term) => term.isUsual)
      const most = Math.max(...ordinary.map(({ size }) => size))
      expect(some.size).toBeGreaterThan(0)
      for (const { key, size } of ordinary)
        if (size > 1e-6 * most) expect([key, some.get(key)?.size]).toEqual([key, expect.closeTo(size, 12)])
      for (const { key, isUsual: is } of some.values()) expect([key, is]).toEqual([key, true])
    },
  )

  test('that are close have all that are usual, and none that the whole has not', () => {
    const [close, some] = [termsOf(looks, 'close'), termsOf(looks, 'usual')]
    for (const key of some.keys()) expect(close.has(key)).toBe(true)
    expect(close.size).toBeGreaterThan(some.size)
    expect(whole.size).toBeGreaterThan(close.size)
    expect(largest(close)).toBeCloseTo(largest(whole), 12)
  })

  test('are fewer, and none of them new, where a larger one is known', () => {
    const [all, few] = [termsOf(looks, 'usual'), termsOf(looks, 'usual', 0, 1e6 * largest(whole))]
    expect(few.size).toBeLessThan(all.size)
    for (const [key, { size }] of few) expect(all.get(key)?.size).toBe(size)
  })
})
