import { describe, expect, test } from 'vitest'
import type { Departure } from '@/mechanism/reason.ts'
import type { Scenario } from '@/mechanism/scenario.ts'
import { machine } from './make.ts'
import { rowWith } from './trade.ts'

const r3 = 102

const atNeedle = (
  card: readonly number[],
  faults: readonly string[],
  needle: number,
  pass = 1,
  more: Partial<Scenario> = {},
): Pick<Departure, 'stage' | 'part'> | undefined => {
  const departure = machine(card, faults, more)
    .passOf(pass)
    .departures.find((one) => one.needle === needle)
  return departure && { stage: departure.stage, part: departure.part }
}

describe('of several faults, the first on the chain is named', () => {
  test.each([
    [['card.blocked.1.3', 'pin.3.low'], 'card', 'card'],
    [['card.blocked.1.3', 'strip.3.seized', 'gate.1.low=0.5'], 'card', 'card'],
    [['sweep.worn=0.8', 'pin.3.low'], 'pin', 'pin.3'],
    [['rocker.3.dead', 'pin.3.low'], 'pin', 'pin.3'],
    [['rocker.3.dead', 'sweep.worn=0.8'], 'sweep', 'sweep'],
    [['rocker.3.dead', 'belt.timing=3'], 'sweep', 'belt'],
    [['strip.3.seized', 'rocker.3.dead'], 'rocker', 'rocker.3'],
    [['catch.R3.broken', 'strip.3.seized'], 'strip', 'strip.3'],
    [['gate.1.low=0.5', 'catch.R3.broken'], 'hold', 'catch.R3'],
    [['gate.1.low=0.5', 'needle.R3.bent'], 'hold', 'needle.R3'],
    [['gate.1.low=0.5', 'presser.right.worn=0.8'], 'hold', 'presser.right'],
    [['needle.R3.gone', 'strip.3.seized'], 'strip', 'strip.3'],
  ])('under a hole, with %j: %s, %s', (faults, stage, part) => {
    expect(atNeedle([0xffffff], faults, r3)).toEqual({ stage, part })
  })

  test.each([
    [['card.torn.1.3', 'strip.3.over'], 'card', 'card'],
    [['strip.3.over', 'pin.3.high'], 'pin', 'pin.3'],
    [['needle.R3.stiff', 'strip.3.over'], 'strip', 'strip.3'],
    [['retainer.worn=1000', 'needle.R3.stiff'], 'gate', 'needle.R3'],
    [['gate.1.high=0.5', 'needle.R3.stiff=3'], 'gate', 'gate.1'],
  ])('under no hole, with %j: %s, %s', (faults, stage, part) => {
    expect(atNeedle([0], faults, r3)).toEqual({ stage, part })
  })
})

describe('the part named is the one that did it', () => {
  test('a pin without spring, at the needles of its strip that other columns serve', () => {
    // Going right from L100 the sweep first meets column 3 at L94; L86 is eight on, in column 11.
    expect(atNeedle([rowWith(3)], ['pin.3.over'], 14)).toEqual({ stage: 'pin', part: 'pin.3' })
  })

  test('the first of several short turns and dead pawls', () => {
    const faults = ['pawl.left', 'turn.short.4']
    const card = [0xffffff, 0, 0, 0, 0]
    expect(atNeedle([0, 0xffffff, 0, 0, 0], faults, r3, 3)).toEqual({ stage: 'card', part: 'pawl.left' })
    expect(atNeedle(card, ['turn.short.2', 'pawl.left'], r3, 2)).toEqual({ stage: 'card', part: 'turn' })
    expect(atNeedle(card, ['card.locked', 'pawl.double'], r3, 2)).toEqual({ stage: 'card', part: 'card' })
  })

  test('the card, where a row misread shows nothing else but a hole of its own is torn', () => {
    expect(atNeedle([0, 0], ['card.torn.2.3'], r3, 2)).toEqual({ stage: 'card', part: 'card' })
  })

  test('the rocker that was pushed, where the belt is out by 8 and its strip’s other pin does the pushing', () => {
    // Out by 8, the belt pushes pin 11 when R3, of column 3, is under the presser: it is rocker 11 that fails there.
    expect(atNeedle([0xffffff], ['belt.timing=8', 'rocker.11.dead'], r3)?.part).not.toBe('rocker.3')
  })

  test('a pin stuck low or a dead rocker, and no sound rocker, where another pin of the strip keeps its push', () => {
    const faults = ['pin.3.low', 'pin.11.over', 'rocker.11.dead']
    expect(['pin.3', 'rocker.11']).toContain(atNeedle([0xffffff], faults, r3)?.part)
  })

  test('the belt and not the sound strip, where a fast strip is still a little shifted after a mistimed push', () => {
    // The sweep passes pin 11 at 0.65 needles before R3; at 2000 mm/s strip 3 has not come back by then.
    const fast = { speed: 2000 }
    expect(atNeedle([rowWith(11)], ['belt.timing=8.65'], r3, 1, fast)).toEqual({
      stage: 'sweep',
      part: 'belt',
    })
  })
})
