import { describe, expect, test } from 'vitest'
import { conditionOf } from '@/mechanism/condition.ts'
import { type Fault, faultId, partOfFault } from '@/mechanism/fault.ts'
import { buttReturnOf, freeHeight, heldHeight } from '@/mechanism/gate.ts'
import { catchDepthOf, dipOf, dipsEnough } from '@/mechanism/hold.ts'
import { startRun } from '@/mechanism/pass.ts'
import { holePunched, pinHeight } from '@/mechanism/pin.ts'
import { rockerOut } from '@/mechanism/rocker.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { machine } from './make.ts'

describe('what is beyond the machine’s ends is read as drawn and never as no number', () => {
  const { condition } = machine([0xffffff], ['retainer.worn=12'], { wear: 1 })

  test('a needle that is not there has no error of its own', () => {
    expect(dipOf(condition, 200, 1)).toBeCloseTo(1.5 - 0.35, 12)
    expect(catchDepthOf(condition, 200)).toBe(0.9)
    expect(dipsEnough(condition, 200, -1)).toBe(true)
    expect(heldHeight(condition, -1)).toBe(-0.9)
    expect(freeHeight(condition, -1, 1, 0, 2)).toBeCloseTo(-1.15, 12)
    expect(buttReturnOf(condition, 200, 1)).toBeGreaterThan(0)
  })

  test('a pin that is not there has no error of its own and a rocker no lost motion', () => {
    expect(pinHeight(condition, null, 25)).toBe(3)
    expect(rockerOut(condition, 25, 1.5)).toBe(1.5)
  })

  test('a row that the card has not has no hole', () => {
    expect(holePunched(condition, 2, 1)).toBe(false)
    expect(pinHeight(machine([0xffffff]).condition, 2, 1)).toBe(1.2)
  })
})

describe('a fault made without its numbers', () => {
  const bare = (kind: Fault['kind']): Fault => ({ kind, at: [], amount: null })

  test.each(['card.side', 'sweep.worn', 'belt.timing', 'presser.left.worn', 'gate.1.low'] as const)(
    '%s does nothing without an amount',
    (kind) => {
      const run = startRun({ ...soundScenario([0xa53c96]), faults: [bare(kind)] })
      for (const pass of [1, 2]) expect(run.passOf(pass).departures).toEqual([])
    },
  )

  test.each(['pin.low', 'rocker.worn', 'card.torn', 'strip.seized'] as const)(
    '%s touches no part without a place',
    (kind) => {
      const sound = conditionOf(soundScenario([0xa53c96]))
      const { pinStuck, lost, stripStuck } = conditionOf({
        ...soundScenario([0xa53c96]),
        faults: [bare(kind)],
      })
      expect({ pinStuck, lost, stripStuck }).toEqual({
        pinStuck: sound.pinStuck,
        lost: sound.lost,
        stripStuck: sound.stripStuck,
      })
    },
  )

  test('is in no part of the machine', () => {
    expect(() => partOfFault(bare('strip.seized'))).toThrow(RangeError)
  })

  test('has an id that is no fault’s', () => {
    expect(faultId(bare('pin.low'))).toBe('pin.0.low')
    expect(faultId(bare('sweep.worn'))).toBe('sweep.worn')
  })
})
