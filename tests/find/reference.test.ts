import { describe, expect, test } from 'vitest'
import { infer } from '@/find/infer.ts'
import { differences, placeDifferences, queryOf, referenceMachines } from './reference.ts'

const exact = referenceMachines.map((machine, n) => ({ machine, n })).filter(({ machine }) => machine.exact)

/**
 * Where the two computations differ, by machine, and what ours says: of 8 and 28 that nothing shows the bar, in 13 that needles
 * under it are no likelier wrong than others, in 3 that sticky pins beside one that stays pushed over count.
 * `reference-differences.test.ts` shows for each that it is so.
 */
const differing: Readonly<Record<number, Readonly<Record<string, number>>>> = {
  3: { 'column.3': 0.728, 'strip.3': 0.288, 'oil fresh': 0.586, 'oil old': 0.402 },
  8: { retainer: 0.136 },
  13: { 'needle.R84': 0.01, 'needle.R60': 0.01, 'needle.L37': 0.01 },
  28: { retainer: 0.102 },
}

/** The name that a line of difference begins with, and what ours is. */
const nameAndValue = (line: string): [string, number] => {
  const [name, , is] = line.split(/: expected |, is /)
  return [name ?? '', Number(is)]
}

describe('the search for faults beside the answers of a second, independent computation', () => {
  test('has forty machines of it, most of them exact', () => {
    expect(referenceMachines).toHaveLength(40)
    expect(exact).toHaveLength(36)
  })

  test.each(exact)(
    'gives machine $n the same chances of each place, the same oil and the same wear',
    ({ machine, n }) => {
      const found = differences(machine, infer(queryOf(machine)))
      const named = differing[n] ?? {}
      expect(found.map((line) => nameAndValue(line)[0]).sort()).toEqual(Object.keys(named).sort())
      for (const [name, is] of found.map(nameAndValue)) expect(Math.abs(is - named[name]!)).toBeLessThan(0.02)
    },
    120_000,
  )
})

describe('chances of places', () => {
  test.each([
    [[['belt', 0.5]], [['belt', 0.52]], 0],
    [[['belt', 0.5]], [['belt', 0.53]], 0],
    [[['belt', 0.5]], [['belt', 0.58]], 1],
    [[['belt', 0.9]], [['belt', 0.95]], 1],
    [[['belt', 1]], [['belt', 0.985]], 0],
    [[['belt', 1]], [['belt', 0.9]], 1],
    [[], [['belt', 0.03]], 0],
    [[['belt', 0.04]], [], 1],
    [
      [],
      [
        ['belt', 0.5],
        ['card', 0.5],
      ],
      2,
    ],
  ] as const)(
    'agree within a hundredth or two, or within a third in log-odds: %j, %j',
    (one, other, count) => {
      const places = (list: readonly (readonly [string, number])[]) =>
        list.map(([place, wrong]) => ({ place, wrong }))
      expect(placeDifferences(places(one), places(other))).toHaveLength(count)
    },
  )
})
