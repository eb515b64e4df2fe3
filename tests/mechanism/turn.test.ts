import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { conditionOf } from '@/mechanism/condition.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { dueRow, partOfWrongRow, pinsRaised, rowRead, stepsAtTurn } from '@/mechanism/turn.ts'
import { cards, faultsAmong } from './arbitraries.ts'
import { check } from './check.ts'
import { scattered } from './cards.ts'
import { count, machine } from './make.ts'

const feed = [
  ...(['card.locked', 'pawl.right', 'pawl.left', 'pawl.double', 'pawl.skips', 'pawl.jumps'] as const),
  ...(['turn.short', 'turn.twice', 'belt.off'] as const),
]

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
    [['belt.off'], 7, [1, 1, 1, 1, 1]],
    [['turn.twice'], 7, [1, 1, 2, 2, 3]],
    [['turn.twice', 'pawl.left'], 7, [1, 1, 1, 1, 1]],
    [['turn.twice', 'pawl.double'], 7, [1, 1, 3, 3, 5]],
    [['pawl.skips.3'], 7, [1, 2, 2, 3, 4]],
    [['pawl.jumps.3'], 7, [1, 2, 4, 5, 6]],
    [['pawl.jumps.3', 'pawl.double'], 7, [1, 3, 5, 7, 2]],
    [['pawl.jumps.3', 'turn.short.3'], 7, [1, 2, 2, 3, 4]],
    [['pawl.jumps.3', 'pawl.left'], 7, [1, 2, 2, 3, 3]],
    [['pawl.jumps.2', 'turn.twice'], 7, [1, 1, 2, 2, 3]],
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

describe('a wrong row', () => {
  const partIn = (faults: readonly string[], pass: number): string =>
    partOfWrongRow(machine(scattered, faults).condition, pass)

  test.each([
    [['belt.off', 'card.locked', 'turn.twice'], 2, 'belt'],
    [['card.locked', 'turn.twice', 'turn.short.2'], 2, 'card'],
    [['turn.twice', 'turn.short.2', 'pawl.right'], 2, 'lever'],
    [['turn.short.2', 'pawl.right'], 2, 'turn'],
    [['pawl.skips.2', 'pawl.left'], 5, 'pawl.right'],
    [['pawl.skips.3'], 5, 'pawl.left'],
    [['pawl.left', 'turn.short.6'], 8, 'pawl.left'],
    [['turn.twice', 'pawl.left'], 8, 'lever'],
    [['pawl.double', 'pawl.right'], 4, 'pawl.right'],
    [['pawl.double', 'pawl.left'], 4, 'pawl'],
    [['pawl.jumps.5'], 6, 'pawl.left'],
    [['pawl.jumps.4', 'turn.short.5'], 6, 'pawl.right'],
  ])('with %j in pass %i is because of the first turn that was wrong: %s', (faults, pass, part) => {
    expect(partIn(faults, pass)).toBe(part)
  })
})

describe('the pins', () => {
  const raised = (faults: readonly string[]): number[] =>
    count(1, 6).map((pass) => pinsRaised(machine(scattered, faults).condition, pass))

  test('drop and rise at every turn past the mark, whether or not the card steps', () => {
    expect(raised(['card.locked', 'pawl.right', 'pawl.skips.3', 'turn.twice'])).toEqual([1, 2, 3, 4, 5, 6])
  })

  test('stay as they are at a turn short of the mark, and with the belt not engaged', () => {
    expect(raised(['turn.short.3', 'turn.short.4', 'turn.short.6'])).toEqual([1, 2, 2, 2, 5, 5])
    expect(raised(['belt.off'])).toEqual([1, 1, 1, 1, 1, 1])
  })
})
