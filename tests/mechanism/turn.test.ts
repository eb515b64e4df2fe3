import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { conditionOf } from '@/mechanism/condition.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { dueRow, rowRead, stepsAtTurn } from '@/mechanism/turn.ts'
import { cards, faultsAmong } from './arbitraries.ts'
import { check } from './check.ts'
import { scattered } from './cards.ts'
import { count, machine } from './make.ts'

const feed = ['card.locked', 'pawl.right', 'pawl.left', 'pawl.double', 'turn.short'] as const

const rowsRead = (faults: readonly string[], rows: number, passes = 9): (number | null)[] => {
  const { condition } = machine(scattered.slice(0, rows), faults)
  return count(1, passes).map((pass) => rowRead(condition, pass))
}

describe('the card', () => {
  test('steps one row at each turn and is a loop', () => {
    expect(rowsRead([], 4)).toEqual([1, 2, 3, 4, 1, 2, 3, 4, 1])
    expect(rowsRead([], 1)).toEqual([1, 1, 1, 1, 1, 1, 1, 1, 1])
  })

  test.each([
    [['card.locked'], 4, [1, 1, 1, 1, 1]],
    [['pawl.right'], 7, [1, 1, 2, 2, 3]],
    [['pawl.left'], 7, [1, 2, 2, 3, 3]],
    [['pawl.right', 'pawl.left'], 7, [1, 1, 1, 1, 1]],
    [['pawl.double'], 4, [1, 3, 1, 3, 1]],
    [['pawl.double'], 3, [1, 3, 2, 1, 3]],
    [['pawl.double', 'pawl.left'], 7, [1, 3, 3, 5, 5]],
    [['turn.short.2'], 7, [1, 1, 2, 3, 4]],
    [['turn.short.3', 'turn.short.4'], 7, [1, 2, 2, 2, 3]],
    [['turn.short.3', 'turn.short.3'], 7, [1, 2, 2, 3, 4]],
    [['turn.short.2', 'pawl.right'], 7, [1, 1, 2, 2, 3]],
    [['turn.short.2', 'pawl.left'], 7, [1, 1, 1, 2, 2]],
    [['turn.short.3', 'pawl.double'], 7, [1, 3, 3, 5, 7]],
  ])('with %j and %i rows reads %j', (faults, rows, read) => {
    expect(rowsRead(faults, rows, 5)).toEqual(read)
  })

  test('reads in each pass the row that the turns so far, walked one by one, have brought', () => {
    check(
      fc.property(cards, faultsAmong(feed, 5), (card, faults) => {
        const condition = conditionOf({ ...soundScenario(card), faults })
        let stepped = 0
        for (let pass = 1; pass <= 20; pass++) {
          if (pass > 1) stepped += stepsAtTurn(condition, pass)
          expect(rowRead(condition, pass)).toBe((stepped % card.length) + 1)
        }
      }),
    )
  })

  test('steps by its two pawls: the right one before even passes, the left one before odd', () => {
    const right = machine(scattered, ['pawl.right']).condition
    const left = machine(scattered, ['pawl.left']).condition
    expect(count(2, 5).map((pass) => stepsAtTurn(right, pass))).toEqual([0, 1, 0, 1])
    expect(count(2, 5).map((pass) => stepsAtTurn(left, pass))).toEqual([1, 0, 1, 0])
  })

  test('is due to show one row further in each pass, whatever the faults', () => {
    const { condition } = machine(scattered.slice(0, 3), ['card.locked', 'pawl.double'])
    expect(count(1, 5).map((pass) => dueRow(condition, pass))).toEqual([1, 2, 3, 1, 2])
  })

  test('has no row where there is no card', () => {
    const { condition } = machine(null)
    expect(rowRead(condition, 3)).toBeNull()
    expect(dueRow(condition, 3)).toBeNull()
  })
})
