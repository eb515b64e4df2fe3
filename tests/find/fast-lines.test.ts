import { describe, expect, test } from 'vitest'
import { columnChances, readers, wrongHole } from '@/find/chances.ts'
import type { ColumnSums } from '@/find/column-sums.ts'
import {
  columnStates,
  fastLinesOf,
  fastValues,
  lineTotalsOf,
  partsOf,
  partsWith,
  setValue,
} from '@/find/fast-lines.ts'
import { certainties, peaksOf } from '@/find/peaks.ts'
import { columnParts, type FastSums, fastTotal, soundColumn } from '@/find/strip-sums.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { numbers } from './make.ts'

const next = numbers(5)
const columnSums = (): ColumnSums => {
  const stickyBy = [next(), next(), next()]
  return {
    follows: next(),
    never: next(),
    dead: next(),
    always: next(),
    stickyBy,
    sticky: 0.25 * stickyBy[0]! + 0.5 * stickyBy[1]! + 0.25 * stickyBy[2]!,
    holes: [next(), next()],
    other: next(),
  }
}

const total = (parts: Readonly<Record<string, number>>): number =>
  Object.values(parts).reduce((sum, one) => sum + one, 0)

describe('what a column adds up to, by what it is', () => {
  test('has each state at its chance, worn where its pushes do not suffice', () => {
    const sums = columnSums()
    const { dead, high, over, sticky, other } = columnChances.usual
    const right = 1 - dead - high - over - sticky - other
    expect(soundColumn('usual')).toBeCloseTo(right, 12)
    const parts = columnParts(sums, 'usual', 0.75)
    const expected = {
      sound: 0.75 * right * (1 - 2 * wrongHole) * sums.follows,
      worn: 0.25 * right * sums.never,
      hole: 0.75 * right * wrongHole * (sums.holes[0]! + sums.holes[1]!),
      dead: dead * sums.dead + 0.25 * over * sums.never,
      high: high * (0.75 * sums.always + 0.25 * sums.never),
      sticky: sticky * (0.75 * sums.sticky + 0.25 * sums.never),
      other: other * sums.other,
    }
    for (const [state, value] of Object.entries(expected))
      expect([state, parts[state as keyof typeof parts]]).toEqual([state, expect.closeTo(value, 14)])
    expect(fastTotal([sums, 0.5], 'usual', 0.75)).toBeCloseTo(total(expected) * 0.75 * over * 0.5, 14)
  })
})

// By certainty; two sets of columns that stay pushed over: none, and the second.
const byCertainty = certainties.map((): FastSums[] => [
  [columnSums(), columnSums(), columnSums()],
  [columnSums(), next(), columnSums()],
])
const lines = fastLinesOf(byCertainty)
const peaks = peaksOf(dimensions)
const exact = byCertainty.length - 1

/** By state what a column is, by how likely its pushes suffice with each certainty. */
const partsBy = (reader: number, set: number, n: number, shares: readonly number[]): number[] => {
  const name = readers[reader]!
  const own = byCertainty.map((sums) => sums[set]![n]!)
  const none = 1 - shares.reduce((sum, one) => sum + one, 0)
  return columnStates.map((state) => {
    if (state === 'over')
      return shares.reduce((sum, share, g) => {
        const one = own[g]!
        return typeof one === 'number' ? sum + share * columnChances[name].over * one : sum
      }, 0)
    return shares.reduce(
      (sum, share, g) => {
        const one = own[g]!
        return typeof one === 'number' ? sum : sum + share * columnParts(one, name, 1)[state]
      },
      typeof own[exact] === 'number' ? 0 : none * columnParts(own[exact]!, name, 0)[state],
    )
  })
}

describe('a strip that follows at once, in each hidden state', () => {
  const hidden = [0, 6, 14].flatMap((wear) =>
    [0, 3].flatMap((pivots) => readers.map((_, reader) => ({ wear, pivots, reader }))),
  )
  const sharesOf = ({ wear, pivots }: (typeof hidden)[number]): number[] =>
    pivots === 0
      ? certainties.map((_, g) => (g === exact ? peaks.sufficient[wear]! : 0))
      : [...peaks.certaintyChances()[wear]![pivots]!]

  test('is a sum over how surely its pushes suffice, column by column and state by state', () => {
    const totals = lineTotalsOf(lines)
    const values = fastValues(totals, hidden, peaks)
    for (const [h, one] of hidden.entries()) {
      const each = [0, 1].map((set) => [0, 1, 2].map((n) => partsBy(one.reader, set, n, sharesOf(one))))
      for (const [set, columns] of each.entries()) {
        for (const [n, parts] of columns.entries())
          for (const [s, part] of partsOf(lines[one.reader]![set]![n]!, one, peaks).entries())
            expect([h, set, n, s, part]).toEqual([h, set, n, s, expect.closeTo(parts[s]!, 12)])
        const product = columns.reduce((all, parts) => all * parts.reduce((sum, part) => sum + part, 0), 1)
        expect(setValue(totals[one.reader]![set]!, one, peaks)).toBeCloseTo(product, 12)
      }
      const whole = each.reduce(
        (sum, columns) =>
          sum + columns.reduce((all, parts) => all * parts.reduce((own, part) => own + part, 0), 1),
        0,
      )
      expect(values[h]).toBeCloseTo(whole, 12)
    }
  })

  test('has as much of its base and of one certainty as asked', () => {
    const line = lines[1]![0]![2]!
    const [base, sixth] = [partsWith(line, 1, 0, 0), partsWith(line, 0, 6, 1)]
    for (const [s, part] of partsWith(line, 0.3, 6, 0.2).entries())
      expect(part).toBeCloseTo(0.3 * base[s]! + 0.2 * sixth[s]!, 14)
    expect([...base]).toEqual(partsBy(1, 0, 2, []).map((one) => expect.closeTo(one, 12) as number))
  })

  test('is never less than nothing', () => {
    const below = lineTotalsOf(lines)[0]![0]!.map((line) => line.map(() => -1e-20))
    expect(setValue(below, { wear: 0, pivots: 0, reader: 0 }, peaks)).toBe(0)
  })
})
