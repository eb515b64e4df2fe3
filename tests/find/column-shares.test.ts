import { describe, expect, test } from 'vitest'
import { byHandOf } from '@/find/by-hand.ts'
import { columnChances, stickyChances } from '@/find/chances.ts'
import { ColumnShares } from '@/find/column-shares.ts'
import { Tally } from '@/find/tally.ts'

const waysOf = (shares: ColumnShares): Map<string, number> => {
  const tally = new Tally()
  shares.addTo(tally)
  return new Map(
    tally
      .entries()
      .flatMap(({ place, ways }) =>
        ways.map(({ causes, weight }): [string, number] => [`${place}: ${causes.join(' | ')}`, weight]),
      ),
  )
}

describe('the ways in which columns are wrong', () => {
  test('are added up by column and state, and have their causes', () => {
    const shares = new ColumnShares()
    for (const [column, state, weight] of [
      [0, 'dead', 0.5],
      [0, 'dead', 0.25],
      [0, 'high', 0.125],
      [23, 'over', 0.5],
      [23, 'other', 0.25],
      [5, 'sound', 1],
      [5, 'worn', 1],
      [5, 'hole', 1],
      [5, 'sticky', 1],
    ] as const)
      shares.add(column, state, weight)
    shares.addSticky(7, 1, 0.5)
    shares.addSticky(7, 2, 0.25)
    expect(Object.fromEntries(waysOf(shares))).toEqual({
      'column.1: pin.1.low | rocker.1.dead': 0.75,
      'column.1: pin.1.high': 0.125,
      'column.24: pin.24.over': 0.5,
      'column.24: other': 0.25,
      'column.8: pin.8.sticky=0.5': 0.5,
      'column.8: pin.8.sticky=0.75': 0.25,
    })
  })

  test('share a sticky pin by how likely each stickiness is of what it did', () => {
    const shares = new ColumnShares()
    shares.addStickyBy(2, [1, 3, 4], 0.8)
    shares.addStickyBy(3, [0, 0, 0], 0.8)
    // Up in one look of three that asked: by each share s at chance × (1 - s) × s².
    shares.addStickyIn(4, 0b010, 0b111, 1)
    const ways = waysOf(shares)
    expect([0.25, 0.5, 0.75].map((share) => ways.get(`column.3: pin.3.sticky=${share}`))).toEqual([
      0.1,
      expect.closeTo(0.3, 12),
      0.4,
    ])
    expect([...ways.keys()].some((key) => key.startsWith('column.4:'))).toBe(false)
    const likely = [0.25 * 0.75 * 0.0625, 0.5 * 0.5 * 0.25, 0.25 * 0.25 * 0.5625]
    const whole = likely.reduce((sum, one) => sum + one, 0)
    for (const [n, share] of [0.25, 0.5, 0.75].entries())
      expect(ways.get(`column.5: pin.5.sticky=${share}`)).toBeCloseTo(likely[n]! / whole, 12)
  })

  test('are as before where the strip hides the column, times what a hand found of them', () => {
    const { dead, high, over, sticky, other } = columnChances.gummed
    const plain = new ColumnShares()
    plain.addUnseen(10, 2, byHandOf([]), 0.5)
    const before = waysOf(plain)
    expect(before.get('column.11: pin.11.low | rocker.11.dead')).toBeCloseTo(0.5 * dead, 12)
    expect(before.get('column.11: pin.11.high')).toBeCloseTo(0.5 * high, 12)
    expect(before.get('column.11: pin.11.over')).toBeCloseTo(0.5 * over, 12)
    expect(before.get('column.11: other')).toBeCloseTo(0.5 * other, 12)
    for (const { share, chance } of stickyChances)
      expect(before.get(`column.11: pin.11.sticky=${share}`)).toBeCloseTo(0.5 * sticky * chance, 12)
    const hand = byHandOf([{ check: 'pins', found: null }])
    const felt = new ColumnShares()
    felt.addUnseen(10, 2, hand, 0.5)
    const after = waysOf(felt)
    const own = hand.columns[10]!
    const whole =
      own.right * (1 - dead - high - over - sticky) +
      own.dead * dead +
      own.high * high +
      own.over * over +
      own.sticky * sticky
    for (const [id, chance] of [
      ['pin.11.low | rocker.11.dead', own.dead * dead],
      ['pin.11.high', own.high * high],
      ['pin.11.over', own.over * over],
      ['other', own.right * other],
      ['pin.11.sticky=0.5', (own.sticky * sticky) / 2],
    ] as const)
      expect(after.get(`column.11: ${id}`)).toBeCloseTo((0.5 * chance) / whole, 12)
    expect(own.dead).not.toBe(own.right)
  })
})
