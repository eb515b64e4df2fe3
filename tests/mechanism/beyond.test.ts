import { describe, expect, test } from 'vitest'
import { hasHole, isPunched } from '@/mechanism/card.ts'
import { makeFault } from '@/mechanism/fault.ts'
import { faultKinds, faultKindNames } from '@/mechanism/fault-kinds.ts'
import { toCardRow, toColumn } from '@/mechanism/indices.ts'
import { marginOf } from '@/mechanism/margins.ts'
import { holeNow, holePunched } from '@/mechanism/pin.ts'
import { machine } from './make.ts'

describe('what is beyond the machine’s ends', () => {
  const { condition } = machine([0xffffff], ['retainer.worn=12'], { wear: 1 })
  const second = toCardRow(2, 2)

  test('is refused where it is a row that the card has not', () => {
    expect(hasHole(0xffffff, toColumn(24))).toBe(true)
    for (const look of [holePunched, holeNow])
      expect(() => look(condition, second, toColumn(1))).toThrow(RangeError)
    expect(() => isPunched([0xffffff], second, toColumn(1))).toThrow(RangeError)
  })

  test('is no hole where there is no card', () => {
    expect(isPunched(null, second, toColumn(1))).toBe(false)
  })

  test('is refused where it is a margin that was not computed', () => {
    expect(() => marginOf([], 'dip')).toThrow(new RangeError('there is no margin “dip”'))
  })
})

describe('a fault that does not fit its kind', () => {
  test.each(['pin.low', 'rocker.worn', 'card.torn', 'strip.seized', 'needle.gone', 'turn.short'] as const)(
    '%s is refused without its indices, and with wrong ones',
    (kind) => {
      const amount = faultKinds[kind].amount?.usual ?? null
      for (const indices of [[], [-26], [10_000], [1.5], [0, 0, 0]])
        expect(() => makeFault(kind, indices, amount)).toThrow(RangeError)
    },
  )

  test.each(faultKindNames.filter((kind) => faultKinds[kind].pattern === kind))(
    '%s is refused with an amount where it takes none, and without one where it takes one',
    (kind) => {
      const usual = faultKinds[kind].amount?.usual ?? null
      expect(makeFault(kind, [], usual)).toEqual({ kind, at: [], amount: usual })
      expect(() => makeFault(kind, [], usual === null ? 1 : null)).toThrow(RangeError)
      expect(() => makeFault(kind, [1], usual)).toThrow(RangeError)
    },
  )
})
