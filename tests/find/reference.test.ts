import { describe, expect, test } from 'vitest'
import { infer } from '@/find/infer.ts'
import { differences, placeDifferences, queryOf, referenceMachines } from './reference.ts'

const exact = referenceMachines.map((machine, n) => ({ machine, n })).filter(({ machine }) => machine.exact)

describe('the search for faults beside the answers of a second, independent computation', () => {
  test('has forty machines of it, most of them exact', () => {
    expect(referenceMachines).toHaveLength(40)
    expect(exact).toHaveLength(36)
  })

  test.each(exact)(
    'gives machine $n the same chances of each place, the same oil and the same wear',
    ({ machine }) => {
      expect(differences(machine, infer(queryOf(machine)))).toEqual([])
    },
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
